namespace HotShop.Physics.Energy;

/// <summary>How gas bills make energy of a metered volume. Nothing is rounded in between; a bill rounds at its end.</summary>
public static class GasBill
{
    /// <summary>Volume factor of gas bills of the United Kingdom: it stands for 12.2 °C, 21 mbar gauge and 67.5 m of altitude. Source: suppliers' bills, Gas (Calculation of Thermal Energy)
    /// Regulations 1996.</summary>
    public const double UnitedKingdomVolumeFactor = 1.02264;

    /// <summary>m³ that those bills count for 100 ft³ of an imperial meter; the exact figure is 2.8316847. Source: suppliers' bills.</summary>
    public const double UnitedKingdomCubicMetresPerHundredCubicFeet = 2.83;

    /// <summary>kWh gross of a metered volume: volume × factor × heating value.</summary>
    /// <param name="cubicMetres">As metered, m³.</param>
    /// <param name="volumeFactor">To base conditions, from the bill or <see cref="GasVolume"/>.</param>
    /// <param name="grossMegajoulesPerCubicMetre">Gross, MJ/m³ at base conditions.</param>
    public static double KilowattHours(double cubicMetres, double volumeFactor, double grossMegajoulesPerCubicMetre) =>
        Require.NotNegative(cubicMetres) * Require.Positive(volumeFactor) * EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(Require.Positive(grossMegajoulesPerCubicMetre));

    /// <summary>Therms of a metered volume as bills of the United States count: CCF × pressure factor × therms per CCF.</summary>
    /// <param name="hundredCubicFeet">As metered, CCF.</param>
    /// <param name="volumeFactor">Pressure and altitude factor.</param>
    /// <param name="thermsPerHundredCubicFeet">The bill's therm factor, about 1.00 to 1.06.</param>
    public static double Therms(double hundredCubicFeet, double volumeFactor, double thermsPerHundredCubicFeet) =>
        Require.NotNegative(hundredCubicFeet) * Require.Positive(volumeFactor) * Require.Positive(thermsPerHundredCubicFeet);
}
