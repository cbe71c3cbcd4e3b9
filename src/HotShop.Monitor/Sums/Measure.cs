using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;

namespace HotShop.Monitor.Sums;

/// <summary>A unit in which a number may be typed and is shown; canonical = value × scale + offset.</summary>
/// <param name="Code">As it stands in an address.</param>
/// <param name="Words">As it stands beside a number.</param>
public sealed record SumUnit(string Code, string Words, double Scale, double Offset = 0)
{
    public double ToCanonical(double value) => value * Scale + Offset;

    public double Of(double canonical) => (canonical - Offset) / Scale;
}

/// <summary>What a number of a sum measures. The first unit is the one that the sum is worked in and that its interface answers in.</summary>
/// <param name="Suffix">What that unit is called in a field's name: the "Kg" of massKg.</param>
/// <param name="Units">The canonical one first.</param>
/// <param name="UsCode">The unit that stands first in a studio of US habits.</param>
public sealed record Measure(string Suffix, IReadOnlyList<SumUnit> Units, string UsCode)
{
    const double FahrenheitPerKelvin = 1.8, MetresPerInch = 0.0254, SquareMetresPerSquareFoot = 144 * MetresPerInch * MetresPerInch, SecondsPerHour = 3600;

    public static Measure Temperature { get; } = new("Celsius", [new("C", "°C", 1), Wired("F", "°F", Dimension.Temperature)], "F");

    public static Measure Mass { get; } = new("Kg", [new("kg", "kg", 1), Wired("lb", "lb", Dimension.Mass), Wired("g", "g", Dimension.Mass)], "lb");

    public static Measure Length { get; } = new("Cm", [new("cm", "cm", 1), Wired("in", "in", Dimension.Length), Wired("mm", "mm", Dimension.Length), Wired("m", "m", Dimension.Length)], "in");

    public static Measure Voltage { get; } = new("Millivolts", [new("mV", "mV", 1)], "mV");

    public static Measure GasVolume { get; } = new("M3", [new("m3", "m³", 1), Wired("ft3", "ft³", Dimension.Volume), Wired("CCF", "CCF", Dimension.Volume)], "CCF");

    public static Measure Energy { get; } = new("Kwh", [new("kWh", "kWh", 1), new("therm", "therm", EnergyUnits.KilowattHoursPerTherm), Wired("MJ", "MJ", Dimension.Energy)], "therm");

    public static Measure Power { get; } = new("Kw", [new("kW", "kW", 1), Wired("Btu/h", "Btu/h", Dimension.Power)], "Btu/h");

    public static Measure Area { get; } = new("M2", [new("m2", "m²", 1), new("ft2", "ft²", SquareMetresPerSquareFoot)], "ft2");

    public static Measure Flux { get; } = new("WattsPerM2",
        [new("W/m2", "W/m²", 1), new("Btu/h/ft2", "Btu/(h ft²)", EnergyUnits.JoulesPerBtu / SecondsPerHour / SquareMetresPerSquareFoot)], "Btu/h/ft2");

    /// <summary>Data sheets of refractories give it in either.</summary>
    public static Measure Conductivity { get; } = new("WattsPerMetreKelvin",
        [new("W/mK", "W/(m K)", 1), new("Btu.in", "Btu in/(h ft² °F)", EnergyUnits.JoulesPerBtu / SecondsPerHour * MetresPerInch / SquareMetresPerSquareFoot * FahrenheitPerKelvin)], "Btu.in");

    public static Measure Hours { get; } = new("Hours", [new("h", "h", 1)], "h");

    public static Measure Percent { get; } = new("Percent", [new("%", "%", 1)], "%");

    /// <summary>A bare number.</summary>
    public static Measure Count { get; } = new("", [new("1", "", 1)], "1");

    /// <summary>Heat of a kilogram.</summary>
    public static Measure EnergyPerMass { get; } = new("KwhPerKg", [new("kWh/kg", "kWh/kg", 1)], "kWh/kg");

    public SumUnit Canonical => Units[0];

    /// <summary>The unit that people of these habits read first.</summary>
    public SumUnit First(bool isUs) => isUs ? Find(UsCode)! : Canonical;

    /// <summary>The other system's; null where all read the same.</summary>
    public SumUnit? Second(bool isUs) => UsCode == Canonical.Code ? null : First(!isUs);

    public SumUnit? Find(string? code) => Units.FirstOrDefault(u => u.Code == code);

    /// <summary>A unit whose factor the wire's unit library has: no factor stands here twice.</summary>
    static SumUnit Wired(string code, string words, Dimension dimension)
    {
        var zero = Ucum.InCanonical(0, code, dimension)!.Value;
        return new(code, words, Ucum.InCanonical(1, code, dimension)!.Value - zero, zero);
    }
}
