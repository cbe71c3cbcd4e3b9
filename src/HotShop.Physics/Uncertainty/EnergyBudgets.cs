namespace HotShop.Physics.Uncertainty;

/// <summary>Why a metered energy, or what it cost, may be off. All errors here are common: the same in every hour of a meter, so a month's is as large, in per
/// cent, as an hour's.</summary>
public static class EnergyBudgets
{
    /// <summary>Energy of a metered gas volume, kWh.</summary>
    /// <param name="kilowattHours">As computed from the volume, gross or net.</param>
    /// <param name="linePascals">Absolute pressure at the meter, Pa.</param>
    /// <param name="lineCelsius">Gas temperature at the meter, °C.</param>
    /// <param name="doubts">Limits of each input.</param>
    /// <param name="meter">Name of the meter: its class error is its own, the rest all gas meters of a studio share.</param>
    /// <remarks>Energy is volume times pressure over temperature times heating value, so relative errors add; JCGM 100:2008 (GUM), 5.1.6.</remarks>
    public static Budget Gas(double kilowattHours, double linePascals, double lineCelsius, GasDoubts doubts, string meter = "meter")
    {
        ArgumentNullException.ThrowIfNull(doubts);
        var percent = kilowattHours / 100;
        return new(kilowattHours,
            Contribution.CommonWithin($"class of {meter}", doubts.MeterPercent, percent),
            Contribution.CommonWithin("line temperature", doubts.LineKelvin, -kilowattHours / PhysicalConstants.Kelvin(Require.Celsius(lineCelsius))),
            Contribution.CommonWithin("line pressure", doubts.LinePascals, kilowattHours / Require.Positive(linePascals)),
            Contribution.CommonWithin("compressibility", doubts.CompressibilityPercent, percent),
            Contribution.CommonWithin("heating value", doubts.HeatingValuePercent, percent));
    }

    /// <summary>Energy of an electricity meter, kWh.</summary>
    /// <param name="kilowattHours">As counted.</param>
    /// <param name="meterPercent">Limit of its class, %; see <see cref="MeterClass.ElectricityLimitPercent"/>.</param>
    /// <param name="meter">Its name.</param>
    public static Budget Electricity(double kilowattHours, double meterPercent, string meter = "meter") =>
        new(kilowattHours, Contribution.CommonWithin($"class of {meter}", meterPercent, kilowattHours / 100));

    /// <summary>Energy of a heater by its plate and the time it was on, kWh.</summary>
    /// <param name="kilowattHours">Plate times hours.</param>
    /// <param name="appliance">Its name.</param>
    /// <param name="percent">How far it may be off its plate, %: 15 is common practice, for supply voltage and worn elements.</param>
    public static Budget Nameplate(double kilowattHours, string appliance = "heater", double percent = 15) =>
        new(kilowattHours, Contribution.CommonWithin($"nameplate of {appliance}", percent, kilowattHours / 100));

    /// <summary>What an energy costs, in the price's currency.</summary>
    /// <param name="energy">kWh.</param>
    /// <param name="pricePerKilowattHour">Of one kWh; tax and fixed charges are exact and are added after.</param>
    /// <param name="priceHalfWidth">How far the price may be off, as for a month whose tariff is not yet known; 0 for a price that is printed.</param>
    public static Budget Cost(Budget energy, double pricePerKilowattHour, double priceHalfWidth = 0)
    {
        ArgumentNullException.ThrowIfNull(energy);
        return energy.Times(new Budget(pricePerKilowattHour, Contribution.CommonWithin("price", priceHalfWidth, 1)));
    }
}
