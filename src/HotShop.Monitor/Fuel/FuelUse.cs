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
    /// <summary>Relative standard uncertainty of a metered energy: the meter's and the gas's together (GUM, JCGM 100:2008, 5.1).</summary>
    internal const double MeteredRelative = 0.0178;

    /// <summary>The part of it that is the meter's own: class 1.5, rectangular.</summary>
    internal const double MeterClassRelative = 0.00866;

    /// <summary>
    /// The part that all gas meters of a studio share, rectangular limits: 5 °C and 5 mbar in the line, and 2 % of heating value, as the bill's is the mean of a month and an
    /// area (common practice).
    /// </summary>
    internal const double GasRelative = 0.0156;

    /// <summary>Of an energy from a nameplate: a heater may draw 15 % more or less than its plate says (common practice), rectangular.</summary>
    internal const double NameplateRelative = 0.087;

    /// <summary>Measured and estimated energy with its standard uncertainty, kWh; what was not measured widens it by as much as it could be.</summary>
    public Estimate Total => With(MeasuredShare is > 0 and < 1 ? EnergyKilowattHours * (1 - MeasuredShare) / MeasuredShare : 0);

    /// <summary>The same with what is thought to be missing, kWh.</summary>
    internal Estimate With(double missingKilowattHours)
    {
        // The unmeasured time burnt between nothing and twice the usual: rectangular around the usual.
        var doubt = double.Hypot(double.Hypot(EnergyKilowattHours * MeteredRelative, EstimatedKilowattHours * NameplateRelative), missingKilowattHours / Math.Sqrt(3));
        return new Estimate(EnergyKilowattHours + EstimatedKilowattHours + missingKilowattHours, doubt);
    }
}
