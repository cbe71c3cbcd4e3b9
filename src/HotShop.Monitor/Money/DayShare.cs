using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>What one appliance used on one day of one kind of energy, known one way, for one purpose: the smallest thing that has a price.</summary>
public sealed record DayShare(
    LocalDate Day, string Appliance, EnergyKind Kind, Origin Origin, Purpose Purpose, double KilowattHours, double BaseCubicMetres, double LineCubicMetres)
{
    /// <summary>Relative standard uncertainty of the energy of the appliance on that day. How it is told apart by purpose is taken as it is.</summary>
    public double EnergyRelative { get; init; }

    /// <summary>The same of the volume at base conditions.</summary>
    public double VolumeRelative { get; init; }
}

/// <summary>A day of the studio: 23, 24 or 25 hours, fewer while it runs.</summary>
/// <param name="MeasuredShare">Part of its time that a meter or sensor speaks for, 0 to 1.</param>
public sealed record DayUse(LocalDate Day, Duration Length, IReadOnlyList<DayShare> Shares, Estimate Gas, Estimate Electricity, double MeasuredShare, int Resets)
{
    /// <summary>Gas at base conditions, m³.</summary>
    public Estimate GasVolume { get; init; }
}
