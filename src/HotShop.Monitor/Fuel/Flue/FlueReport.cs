using HotShop.Physics.Combustion;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Fuel.Flue;

/// <summary>What the flue of an appliance tells now, or why it tells nothing.</summary>
/// <param name="At">Time of the oxygen reading; null where there is none.</param>
/// <param name="OxygenPercent">As the analyser shows it.</param>
/// <param name="Problem">Why there is no excess air, or no heat; null where all that is measured was used.</param>
public sealed record FlueReport(Instant? At, Budget? OxygenPercent, string? Problem)
{
    /// <summary>As a fraction.</summary>
    public Budget? ExcessAir { get; init; }

    public Budget? FlueCelsius { get; init; }

    public double? AirCelsius { get; init; }

    /// <summary>Of the gross heat, as a fraction.</summary>
    public Budget? AvailableHeat { get; init; }

    /// <summary>An excess of air whose interval reaches nothing may be a lack of it.</summary>
    public bool MayLackAir => ExcessAir is { Low95: <= 0 };

    internal static FlueReport Nothing(Instant? at, Budget? oxygen, string problem) => new(at, oxygen, problem);

    internal static Budget Within(string name, double value, double limit) => new(value, Contribution.Rectangular(name, limit));

    internal static bool IsFire(double oxygenPercent) => oxygenPercent / 100 <= FlueReading.MostOxygenFraction;
}
