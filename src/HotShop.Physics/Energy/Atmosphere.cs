namespace HotShop.Physics.Energy;

/// <summary>Mean air pressure by altitude.</summary>
public static class Atmosphere
{
    /// <summary>Standard pressure at sea level, Pa; exact by definition.</summary>
    public const double StandardPascals = 101325;

    /// <summary>Standard atmosphere below 11 km, Pa absolute.</summary>
    /// <param name="altitudeMetres">Above sea level, -500 to 11,000 m.</param>
    /// <remarks>Source: ISO 2533:1975 (288.15 K, 6.5 K/km). Weather moves the real pressure by about ±2 %.</remarks>
    public static double PressurePascals(double altitudeMetres)
    {
        if (altitudeMetres is not (>= -500 and <= 11_000))
            throw new ArgumentOutOfRangeException(nameof(altitudeMetres), altitudeMetres, "expected -500 to 11,000 m");
        const double lapseKelvinPerMetre = 0.0065, seaLevelKelvin = 288.15, exponent = 9.80665 / (287.05287 * lapseKelvinPerMetre);
        return StandardPascals * Math.Pow(1 - lapseKelvinPerMetre * altitudeMetres / seaLevelKelvin, exponent);
    }
}
