using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>Energy used by an appliance over a stretch of time. Measured and estimated stay apart; cost covers both.</summary>
/// <param name="EnergyKilowattHours">Measured; gas gross at base conditions.</param>
/// <param name="EstimatedKilowattHours">From nameplates and on-time.</param>
/// <param name="BaseCubicMetres">Gas at base conditions; 0 without gas.</param>
/// <param name="Cost">In the studio's currency, rounded once to its hundredth; null where a price is missing.</param>
/// <param name="MeasuredShare">Part of the time that a meter or sensor speaks for, 0 to 1.</param>
/// <param name="Resets">Times a counter lost its thread: each loses at most one interval.</param>
public sealed record FuelUse(
    Instant From, Instant To, double EnergyKilowattHours, double EstimatedKilowattHours, double BaseCubicMetres,
    decimal? Cost, double CarbonDioxideKilograms, double MeasuredShare, int Resets)
{
    /// <summary>How far each of its figures may be off, standard, in the figure's unit; without the time that nobody measured.</summary>
    internal UseDoubt Doubt { get; init; } = UseDoubt.None;

    /// <summary>What was measured, with what meter and gas are in doubt for, kWh.</summary>
    internal Estimate Measured => new(EnergyKilowattHours, Doubt.MeasuredKilowattHours);

    /// <summary>What was estimated, kWh.</summary>
    internal Estimate Estimated => new Estimate(EstimatedKilowattHours, Doubt.EstimatedKilowattHours)
        .WithHalfWidth95(Doubt.EstimatedKilowattHours * FuelDoubt.Nameplate.Estimate.CoverageFactor95);

    /// <summary>Measured and estimated energy with its standard uncertainty, kWh; what was not measured widens it by as much as it could be.</summary>
    public Estimate Total => With(MissingKilowattHours);

    double MissingKilowattHours => MeasuredShare is > 0 and < 1 ? EnergyKilowattHours * (1 - MeasuredShare) / MeasuredShare : 0;

    /// <summary>What time without readings adds to the doubt of <see cref="Total"/>, standard, kWh.</summary>
    internal double MissingUncertainty => MissingOf(MissingKilowattHours).StandardUncertainty;

    /// <summary>The unmeasured time burnt between nothing and twice the usual: rectangular around the usual.</summary>
    internal static Estimate MissingOf(double usualKilowattHours) => Estimate.WithinLimits(usualKilowattHours, Math.Abs(usualKilowattHours));

    /// <summary>With what is thought to be missing, kWh.</summary>
    Estimate With(double missingKilowattHours) => Measured + Estimated + MissingOf(missingKilowattHours);
}

/// <summary>Standard uncertainties of the figures of a use.</summary>
/// <param name="Cost">In the currency: what the energy may be off, at its price. Prices are certain.</param>
/// <param name="CarbonDioxideKilograms">What the energy may be off, with the stated factor.</param>
sealed record UseDoubt(double MeasuredKilowattHours, double EstimatedKilowattHours, double BaseCubicMetres, double Cost, double CarbonDioxideKilograms)
{
    public static readonly UseDoubt None = new(0, 0, 0, 0, 0);
}
