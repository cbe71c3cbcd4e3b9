using UnitsNet;

namespace HotShop.Monitor.Wire;

/// <summary>A value in the unit it is stored in, or why it could not be brought there.</summary>
/// <param name="Value">Finite where there is no problem.</param>
/// <param name="Unit">UCUM.</param>
readonly record struct ConvertedValue(double Value, string Unit, string? Problem);

/// <summary>Brings values from the units of the wire (<see cref="UnitSpellings"/>) to those that are stored. The only place that knows the unit library.</summary>
static class Ucum
{
    /// <param name="value">Finite.</param>
    /// <param name="unit">As sent; null: the channel's default.</param>
    public static ConvertedValue ToStored(double value, string? unit, ChannelPlan channel)
    {
        var quantity = channel.Quantity;
        // Degrees and millivolts of a couple are both plain numbers of a few dozen at start-up: guessing would store a wrong temperature.
        if (unit is null && channel.DefaultUnit is null && channel.Thermocouple is not null && quantity == Quantity.Temperature)
            return Refused($"{channel.Id} has a thermocouple, so a number without a unit may be mV or °C: send \"unit\":\"mV\", or set the channel's unit in the configuration");

        var given = unit ?? channel.DefaultUnit ?? quantity.CanonicalUnit();
        var spelling = Plain(given);
        if (Find(DimensionOf(quantity), spelling) is { } known)
            return Finite(Convert(value, known, DimensionOf(quantity)), quantity.CanonicalUnit(), quantity, given);
        if (quantity == Quantity.Temperature && Find(Dimension.Voltage, spelling) is { } voltage)
            return channel.Thermocouple is null
                ? Refused($"{channel.Id} has no thermocouple in the configuration, so {given} cannot become a temperature: send Cel, [degF] or K")
                : Finite(Convert(value, voltage, Dimension.Voltage), Quantities.Millivolt, quantity, given);
        if (quantity == Quantity.GasVolume && Find(Dimension.Pulses, spelling) is not null)
            return channel.CubicMetresPerPulse is { } volume
                ? Finite(value * volume, quantity.CanonicalUnit(), quantity, given)
                : Refused($"{channel.Id} has no cubicMetresPerPulse in the configuration, so pulses cannot become m3: set it, or send m3");
        return Refused(WrongUnit(given, spelling, quantity));
    }

    /// <summary>Why a unit cannot stand for a quantity; null: it can.</summary>
    public static string? ProblemWith(string unit, Quantity quantity)
    {
        var spelling = Plain(unit);
        var isKnown = Find(DimensionOf(quantity), spelling) is not null
            || (quantity == Quantity.Temperature && Find(Dimension.Voltage, spelling) is not null)
            || (quantity == Quantity.GasVolume && Find(Dimension.Pulses, spelling) is not null);
        return isKnown ? null : WrongUnit(unit, spelling, quantity);
    }

    /// <summary>A mass, length, volume or energy of a log entry in kg, cm, m³ or kWh.</summary>
    /// <returns>Null where the unit is none of that dimension, or the value is too large to convert.</returns>
    public static double? InCanonical(double value, string unit, Dimension dimension) =>
        Find(dimension, Plain(unit)) is { } known && Convert(value, known, dimension) is var converted && double.IsFinite(converted) ? converted : null;

    /// <summary>Spellings of a dimension, for a reason or a manual: the first ones are UCUM.</summary>
    public static string Offer(Dimension dimension) => string.Join(", ", UnitSpellings.All[dimension].Units.GroupBy(u => u.Value).Select(u => u.First().Key));

    /// <summary>UCUM codes that values of a quantity may come in, its own first; for a temperature also a couple's mV, for a gas volume also pulses.</summary>
    public static IEnumerable<string> Codes(Quantity quantity)
    {
        var more = quantity switch { Quantity.Temperature => [Quantities.Millivolt], Quantity.GasVolume => ["{pulse}"], _ => (string[])[] };
        return UnitSpellings.All[DimensionOf(quantity)].Units.GroupBy(u => u.Value).Select(u => u.First().Key).OrderByDescending(u => u == quantity.CanonicalUnit()).Concat(more);
    }

    /// <summary>What a unit of the quantity may be, as advice.</summary>
    public static string Offer(Quantity quantity) => quantity.IsState() ? "leave the unit out" : $"write one of {Offer(DimensionOf(quantity))}";

    static ConvertedValue Refused(string problem) => new(0, "", problem);

    static string Plain(string unit) => unit.Trim().Replace('³', '3');

    static Enum? Find(Dimension dimension, string spelling) => UnitSpellings.All[dimension].Units.GetValueOrDefault(spelling);

    static double Convert(double value, Enum from, Dimension dimension)
    {
        var to = UnitSpellings.All[dimension].Canonical;
        if (from.Equals(to)) return value;
        // The unit library throws when a result overflows. Nothing in a studio comes near.
        return Math.Abs(value) < 1e100 ? UnitConverter.Convert(value, from, to) : double.PositiveInfinity;
    }

    static ConvertedValue Finite(double value, string unit, Quantity quantity, string given)
    {
        if (!double.IsFinite(value)) return Refused($"the value is too large once converted from {given} to {unit}");
        if (quantity is Quantity.Temperature or Quantity.Setpoint && unit == "Cel" && value < -273.15)
            return Refused($"{value:0.##} °C is below absolute zero: check the unit and the sensor");
        return new(value + 0.0, unit, null);
    }

    static string WrongUnit(string given, string spelling, Quantity quantity)
    {
        var wanted = quantity.IsState() ? "leave the unit out" : $"send {Offer(DimensionOf(quantity))}";
        foreach (var (dimension, (named, _, _)) in UnitSpellings.All)
            if (Find(dimension, spelling) is not null) return $"'{given}' is a unit of {named}, the channel measures {quantity.NameOf()}: {wanted}";
        return $"the unit '{Shown.Short(given)}' is unknown: {wanted}";
    }

    static Dimension DimensionOf(Quantity quantity) => quantity switch
    {
        Quantity.Temperature or Quantity.Setpoint => Dimension.Temperature,
        Quantity.GasFlow => Dimension.Flow,
        Quantity.GasVolume => Dimension.Volume,
        Quantity.Power => Dimension.Power,
        Quantity.Energy => Dimension.Energy,
        Quantity.Pressure => Dimension.Pressure,
        Quantity.Oxygen => Dimension.Fraction,
        Quantity.CarbonMonoxide => Dimension.TraceFraction,
        Quantity.Mass => Dimension.Mass,
        Quantity.CombustibleGas => Dimension.LowerExplosiveLimit,
        _ => Dimension.State,
    };
}
