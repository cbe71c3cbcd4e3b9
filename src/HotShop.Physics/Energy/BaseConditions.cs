namespace HotShop.Physics.Energy;

/// <summary>Temperature and pressure to which a gas volume is referred. A volume means nothing without them: 1 m³ at 0 °C is
/// 1.055 m³ at 15 °C.</summary>
/// <param name="Name">As shown to people.</param>
/// <param name="Celsius">°C.</param>
/// <param name="PressurePascals">Absolute, Pa.</param>
public sealed record BaseConditions(string Name, double Celsius, double PressurePascals)
{
    /// <summary>15 °C and 101.325 kPa. Source: ISO 13443.</summary>
    public static BaseConditions Iso13443 { get; } = new("15 °C, 101.325 kPa", 15, Atmosphere.StandardPascals);

    /// <summary>60 °F and 14.73 psia, the base of interstate gas tariffs. Source: 40 CFR 98.405; some states use 14.65
    /// psia.</summary>
    public static BaseConditions Us { get; } = new("60 °F, 14.73 psia", (60 - 32) / 1.8, 14.73 * EnergyUnits.PascalsPerPsi);

    /// <summary>0 °C and 101.325 kPa, "normal" cubic metres. Source: DIN 1343.</summary>
    public static BaseConditions Normal { get; } = new("0 °C, 101.325 kPa", 0, Atmosphere.StandardPascals);

    public double Celsius { get; } = Require.Celsius(Celsius);

    public double PressurePascals { get; } = Require.Positive(PressurePascals);
}
