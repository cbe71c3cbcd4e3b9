using HotShop.Physics.Melting;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>Fuel per kilogram of a furnace over some days. What is not known is null, with the reason and what is needed in words.</summary>
/// <param name="From">First edge of a day: an hour by which the usual charges have melted.</param>
/// <param name="To">Last edge.</param>
/// <param name="Holding">Gross kW of the furnace only held, at <paramref name="HeldCelsius"/>, doors shut.</param>
/// <param name="Line">Melting energy and what another throughput would need.</param>
/// <param name="HoldingUnknown">Why there is no holding power.</param>
/// <param name="MeltingUnknown">Why there is no melting energy.</param>
/// <param name="ThroughputUnknown">Why it cannot be said what another throughput would need.</param>
/// <param name="Note">What the figures hold that they should not; null where there is nothing to say.</param>
public sealed record MeltingReport(
    Instant From, Instant To, Estimate? Holding, double? HeldCelsius, MeltingLine? Line, string? HoldingUnknown, string? MeltingUnknown, string? ThroughputUnknown, string? Note);

/// <summary>Days against what the same furnace's line before them gives at their throughput: what is left is not the throughput's doing.</summary>
/// <param name="Baseline">The days before, on which the line stands.</param>
/// <param name="Days">The days compared.</param>
/// <param name="ActualKilowattHours">What they burnt, gross.</param>
/// <param name="ExpectedKilowattHours">What the line gives for their temperatures, charges and kilograms.</param>
/// <param name="SavedKilowattHours">Expected less actual: above 0 saved. The meter's and scale's errors are common to both and cancel.</param>
/// <param name="RunningKilowattHours">Actual less expected, summed up to the end of each day: falling is saving, a bend marks a change.</param>
public sealed record MeltingComparison(
    MeltingLine Baseline, IReadOnlyList<MeltingDay> Days, double ActualKilowattHours, Estimate ExpectedKilowattHours, Estimate SavedKilowattHours, IReadOnlyList<Estimate> RunningKilowattHours)
{
    public double Kilograms => Days.Sum(d => d.ChargedKilograms);

    /// <summary>What was burnt over the glass, kWh/kg; null where nothing was melted.</summary>
    public Estimate? ActualPerKilogram => Kilograms > 0
        ? Estimate.Relative(ActualKilowattHours, Baseline.Doubt.Energy) / Estimate.Relative(Kilograms, Baseline.Doubt.Glass) : null;

    /// <summary>Expected over the glass, kWh/kg; null where nothing was melted.</summary>
    public Estimate? ExpectedPerKilogram => Kilograms > 0 ? new Estimate(ExpectedKilowattHours.Value / Kilograms, ExpectedKilowattHours.StandardUncertainty / Kilograms) : null;
}
