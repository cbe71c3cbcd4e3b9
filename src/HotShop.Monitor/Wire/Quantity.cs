using HotShop.Physics.Energy;

namespace HotShop.Monitor.Wire;

/// <summary>What a channel measures. The names on the wire and in the configuration are those of <see cref="Quantities"/>.</summary>
public enum Quantity
{
    Temperature, Setpoint, GasFlow, GasVolume, Power, Energy, Pressure, Oxygen, Mass, CarbonMonoxide, CombustibleGas,
    Flame, Valve, CallForHeat, LockOut, BlowerProven, HighLimit, GasPressureOk, Mains, Door, Relay,
}

/// <summary>The canonical unit of each quantity (UCUM), in which readings are stored, and how its value runs between two readings.</summary>
public static class Quantities
{
    /// <summary>UCUM code of the unit that thermocouple voltages are stored in.</summary>
    public const string Millivolt = "mV";

    /// <summary>What temperatures are kept under as they were read, before the correction of a calibration: °C with an annotation of UCUM.</summary>
    public const string AsRead = "Cel{as-read}";

    static readonly Dictionary<Quantity, (string Name, string Unit)> Known = new()
    {
        [Quantity.Temperature] = ("temperature", "Cel"),
        [Quantity.Setpoint] = ("setpoint", "Cel"),
        [Quantity.GasFlow] = ("gas-flow", "m3/h"),
        [Quantity.GasVolume] = ("gas-volume", "m3"),
        [Quantity.Power] = ("power", "kW"),
        [Quantity.Energy] = ("energy", "kW.h"),
        [Quantity.Pressure] = ("pressure", "Pa"),
        [Quantity.Oxygen] = ("oxygen", "%"),
        [Quantity.Mass] = ("mass", "kg"),
        [Quantity.CarbonMonoxide] = ("carbon-monoxide", "[ppm]"),
        [Quantity.CombustibleGas] = ("combustible-gas", "%"),
        [Quantity.Flame] = ("flame", "1"),
        [Quantity.Valve] = ("valve", "1"),
        [Quantity.CallForHeat] = ("call-for-heat", "1"),
        [Quantity.LockOut] = ("lock-out", "1"),
        [Quantity.BlowerProven] = ("blower-proven", "1"),
        [Quantity.HighLimit] = ("high-limit", "1"),
        [Quantity.GasPressureOk] = ("gas-pressure-ok", "1"),
        [Quantity.Mains] = ("mains", "1"),
        [Quantity.Door] = ("door", "1"),
        [Quantity.Relay] = ("relay", "1"),
    };

    static readonly Dictionary<string, Quantity> ByName = Known.ToDictionary(q => q.Value.Name, q => q.Key);

    public static IEnumerable<string> Names => ByName.Keys;

    public static bool TryParse(string name, out Quantity quantity) => ByName.TryGetValue(name, out quantity);

    public static string NameOf(this Quantity quantity) => Known[quantity].Name;

    /// <summary>UCUM code of the unit that values of this quantity are stored and reported in; "1" for states (0 or 1).</summary>
    public static string CanonicalUnit(this Quantity quantity) => Known[quantity].Unit;

    /// <summary>Whether values of this unit are kept only beside the ones made of them.</summary>
    public static bool IsRaw(string unit) => unit is Millivolt or AsRead;

    public static bool IsState(this Quantity quantity) => quantity >= Quantity.Flame;

    /// <summary>Counters only ever grow; their value is a difference, never an integral.</summary>
    public static bool IsCumulative(this Quantity quantity) => quantity is Quantity.GasVolume or Quantity.Energy;

    /// <summary>Flow, power and temperature change along a line between readings; states and setpoints hold their last value.</summary>
    public static Course CourseOf(this Quantity quantity) =>
        quantity.IsState() || quantity == Quantity.Setpoint ? Course.Held : Course.Linear;
}
