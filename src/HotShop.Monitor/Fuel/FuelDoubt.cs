using HotShop.Monitor.Wire;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Fuel;

/// <summary>How far meters and nameplates may be off, as relative standard uncertainties of the library's budgets.</summary>
static class FuelDoubt
{
    /// <summary>A meter's or sensor's own error: anywhere within its class, whatever it counts.</summary>
    public static double Of(ChannelPlan meter) => OfClass(meter.ClassPercent);

    /// <summary>The same as a reason among others why a sum may be off.</summary>
    /// <param name="kilowattHours">What it counted of the sum.</param>
    public static Contribution ClassOf(ChannelPlan meter, double kilowattHours) => EnergyBudgets.Electricity(kilowattHours, meter.ClassPercent, meter.Id).Contributions[0];

    /// <summary>The same of the studio's main meter; where none is described, of the usual class.</summary>
    public static double OfMain(MeterTree meters, EnergyKind kind) => OfClass(meters.Main(kind)?.Channel.ClassPercent ?? ChannelPlan.UsualClassPercent);

    /// <summary>An energy from a nameplate.</summary>
    public static Budget Nameplate { get; } = EnergyBudgets.Nameplate(1);

    static double OfClass(double percent) => EnergyBudgets.Electricity(1, percent).StandardUncertainty;
}
