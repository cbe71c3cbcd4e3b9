using HotShop.Monitor.Sums.Each;

namespace HotShop.Monitor.Sums;

static class SumSetup
{
    /// <summary>In the order in which they are listed.</summary>
    public static IServiceCollection AddSums(this IServiceCollection services) => services.AddSingleton<SumBook>()
        .AddSingleton<Sum, CoupleSum>().AddSingleton<Sum, AirSum>().AddSingleton<Sum, OpeningSum>().AddSingleton<Sum, WallSum>()
        .AddSingleton<Sum, GasSum>().AddSingleton<Sum, PropaneSum>()
        .AddSingleton<Sum, WeightSum>().AddSingleton<Sum, MeltSum>().AddSingleton<Sum, ViscositySum>()
        .AddSingleton<Sum, GathersSum>().AddSingleton<Sum, DipSum>().AddSingleton<Sum, ChargeSum>();
}
