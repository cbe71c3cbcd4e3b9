namespace HotShop.Physics.Energy;

/// <summary>Units of gas bills in SI. Exact by definition unless said otherwise.</summary>
public static class EnergyUnits
{
    public const double MegajoulesPerKilowattHour = 3.6;

    const double JoulesPerKilowattHour = 1e6 * MegajoulesPerKilowattHour;

    /// <summary>International-table British thermal unit.</summary>
    public const double JoulesPerBtu = 1055.05585262;

    /// <summary>Therm of 100,000 Btu (international table), 29.307107 kWh.</summary>
    public const double KilowattHoursPerTherm = 100_000 * JoulesPerBtu / JoulesPerKilowattHour;

    /// <summary>Million Btu, a dekatherm: 293.07107 kWh.</summary>
    public const double KilowattHoursPerMillionBtu = 10 * KilowattHoursPerTherm;

    public const double CubicMetresPerCubicFoot = 0.028316846592;

    /// <summary>US gallon.</summary>
    public const double LitresPerGallon = 3.785411784;

    /// <summary>Avoirdupois pound.</summary>
    public const double KilogramsPerPound = 0.45359237;

    public const double PascalsPerPsi = 6894.757293168;

    /// <summary>Conventional inch of water at 4 °C, rounded.</summary>
    public const double PascalsPerInchOfWater = 249.089;

    /// <summary>kWh/m³ of a heating value in MJ/m³, at the same base conditions.</summary>
    public static double KilowattHoursPerCubicMetreOfMegajoules(double megajoulesPerCubicMetre) =>
        megajoulesPerCubicMetre / MegajoulesPerKilowattHour;

    /// <summary>kWh/m³ of a heating value in Btu/ft³, at the same base conditions.</summary>
    public static double KilowattHoursPerCubicMetreOfBtu(double btuPerCubicFoot) =>
        btuPerCubicFoot * JoulesPerBtu / JoulesPerKilowattHour / CubicMetresPerCubicFoot;
}
