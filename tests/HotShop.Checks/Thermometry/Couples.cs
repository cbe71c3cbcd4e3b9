using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>The eight types under their letters, as the checks write them.</summary>
static class Couples
{
    /// <summary>Where the functions are printed.</summary>
    public const string Monograph = "NIST Monograph 175 (1993)";

    public static Thermocouple B => Thermocouple.OfType(ThermocoupleType.B);
    public static Thermocouple E => Thermocouple.OfType(ThermocoupleType.E);
    public static Thermocouple J => Thermocouple.OfType(ThermocoupleType.J);
    public static Thermocouple K => Thermocouple.OfType(ThermocoupleType.K);
    public static Thermocouple N => Thermocouple.OfType(ThermocoupleType.N);
    public static Thermocouple R => Thermocouple.OfType(ThermocoupleType.R);
    public static Thermocouple S => Thermocouple.OfType(ThermocoupleType.S);
}
