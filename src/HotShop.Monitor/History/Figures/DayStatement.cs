using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;
using Quartz;

namespace HotShop.Monitor.History.Figures;

/// <summary>Writes down each night what is said of the days that are over. Calendar work, so Quartz calls it.</summary>
[DisallowConcurrentExecution]
sealed class DayStatement(StudioPlan plan, DayFigures figures, FuelBook fuel, IStoreReader store, IStoreWriter writer, TimeProvider clock) : IJob
{
    /// <summary>Five past three in the studio's zone: devices that were cut off have had three hours to send what they kept.</summary>
    public const string At = "0 5 3 * * ?";

    /// <summary>After a long downtime the last month is stated; older days only when a replay is asked to.</summary>
    const int MostDays = 31;

    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) => await Run(clock.GetUtcNow().ToInstant(), cancellationToken);

    /// <returns>Days stated.</returns>
    public async Task<int> Run(Instant now, CancellationToken stop)
    {
        var yesterday = now.InZone(plan.Zone).Date.PlusDays(-1);
        var first = StatedFigures.LastDay(store)?.PlusDays(1) ?? yesterday;
        first = LocalDate.Max(first, yesterday.PlusDays(1 - MostDays));
        if (first > yesterday) return 0;
        var stated = figures.Of(fuel, first, yesterday, now).ToList();
        await writer.Write(scope => StatedFigures.Write(stated, first, yesterday, scope), stop);
        return Period.DaysBetween(first, yesterday) + 1;
    }
}
