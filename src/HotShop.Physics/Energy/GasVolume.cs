namespace HotShop.Physics.Energy;

/// <summary>Gas volume as the meter saw it, referred to base conditions (ideal gas).</summary>
public static class GasVolume
{
    /// <summary>Volume at base conditions, m³.</summary>
    /// <param name="lineCubicMetres">At the meter, m³. Do not pass a volume that the meter has already compensated ("TC",
    /// thermal mass meters).</param>
    /// <param name="gaugePressurePascals">Above the air pressure, Pa.</param>
    /// <param name="atmosphericPascals">Air pressure at the meter, Pa absolute.</param>
    /// <param name="lineCelsius">Gas temperature at the meter, °C.</param>
    /// <param name="baseConditions">What the volume is referred to.</param>
    public static double ToBase(
        double lineCubicMetres, double gaugePressurePascals, double atmosphericPascals, double lineCelsius, BaseConditions baseConditions) =>
        Require.Finite(lineCubicMetres) * BaseFactor(gaugePressurePascals, atmosphericPascals, lineCelsius, baseConditions);

    /// <summary>Base volume per line volume: (p_gauge + p_atm) / p_base · T_base / T_line.</summary>
    /// <remarks>Compressibility is left out: from 5 psi gauge to base it is worth 0.07 % for methane; carry 0.05 % uncertainty
    /// for it.</remarks>
    public static double BaseFactor(
        double gaugePressurePascals, double atmosphericPascals, double lineCelsius, BaseConditions baseConditions)
    {
        ArgumentNullException.ThrowIfNull(baseConditions);
        var linePascals = Require.Positive(Require.Finite(gaugePressurePascals) + Require.Positive(atmosphericPascals));
        return linePascals / baseConditions.PressurePascals
            * (PhysicalConstants.Kelvin(baseConditions.Celsius) / PhysicalConstants.Kelvin(Require.Celsius(lineCelsius)));
    }

    /// <summary>The same with compressibility: times Z_base / Z_line.</summary>
    /// <param name="baseCompression">Compression factor at base conditions, about 0.998 for natural gas.</param>
    /// <param name="lineCompression">Compression factor in the line.</param>
    public static double BaseFactor(
        double gaugePressurePascals, double atmosphericPascals, double lineCelsius, BaseConditions baseConditions, double baseCompression, double lineCompression) =>
        BaseFactor(gaugePressurePascals, atmosphericPascals, lineCelsius, baseConditions) * Require.Positive(baseCompression) / Require.Positive(lineCompression);
}
