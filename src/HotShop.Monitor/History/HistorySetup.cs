using HotShop.Monitor.History.Figures;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.History.Local;
using HotShop.Monitor.History.Replay;

namespace HotShop.Monitor.History;

static class HistorySetup
{
    /// <summary>What the commands do, whether in the service or beside a store that no service has.</summary>
    public static IServiceCollection AddHistory(this IServiceCollection services) => services
        .AddSingleton<ReadingImport>().AddSingleton<LogbookImport>().AddSingleton<BillImport>().AddSingleton<FileImport>()
        .AddSingleton<DayFigures>().AddSingleton<AlarmReplay>().AddSingleton<StudioReplay>();

    /// <summary>Where commands on this computer come in while the service runs. Added last: it opens when the pages do.</summary>
    public static IServiceCollection AddLocalDoor(this IServiceCollection services) =>
        services.AddSingleton<LocalDoor>().AddHostedService(s => s.GetRequiredService<LocalDoor>());
}
