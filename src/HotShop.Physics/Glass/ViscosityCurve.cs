namespace HotShop.Physics.Glass;

/// <summary>Viscosity over temperature after Vogel, Fulcher and Tammann: log10 η = A + B / (T − T0).</summary>
/// <remarks>Tables print A for Pa·s or for dPa·s (poise); the two differ by 1, which moves a working point by 100 °C. Here A is for
/// dPa·s, and <see cref="OfPascalSeconds"/> takes the other.</remarks>
/// <param name="A">log10 of dPa·s.</param>
/// <param name="BKelvin">K, above 0.</param>
/// <param name="T0Celsius">Where the formula runs to infinity, °C; it holds well above that only.</param>
public sealed record ViscosityCurve(double A, double BKelvin, double T0Celsius)
{
    /// <summary>log10 of how many dPa·s a Pa·s is.</summary>
    const double Deci = 1;

    public double A { get; } = Require.Finite(A);

    public double BKelvin { get; } = Require.Positive(BKelvin);

    public double T0Celsius { get; } = Require.Celsius(T0Celsius);

    /// <summary>A curve whose A was printed for Pa·s.</summary>
    public static ViscosityCurve OfPascalSeconds(double a, double bKelvin, double t0Celsius) => new(a + Deci, bKelvin, t0Celsius);

    /// <summary>The curve through three points, exactly.</summary>
    /// <exception cref="ArgumentException">No such curve falls through them: they must stiffen as they cool, and ever faster.</exception>
    public static ViscosityCurve Through(ViscosityPoint soft, ViscosityPoint middle, ViscosityPoint stiff) =>
        ThroughOrNull(soft, middle, stiff) ?? throw new ArgumentException("these three points lie on no viscosity curve of a glass");

    /// <summary>The curve through three points; <see langword="null"/> when no curve of a glass falls through them.</summary>
    public static ViscosityCurve? ThroughOrNull(ViscosityPoint soft, ViscosityPoint middle, ViscosityPoint stiff)
    {
        // (A − L)(T − T0) = −B at each point; the differences of two points are linear in A and T0.
        var (l2, t2) = (soft.Log10DecipascalSeconds - middle.Log10DecipascalSeconds, soft.Celsius - middle.Celsius);
        var (l3, t3) = (soft.Log10DecipascalSeconds - stiff.Log10DecipascalSeconds, soft.Celsius - stiff.Celsius);
        var (r2, r3) = (soft.Product - middle.Product, soft.Product - stiff.Product);
        var determinant = l2 * t3 - l3 * t2;
        var t0 = (r2 * t3 - r3 * t2) / determinant;
        var a = (l2 * r3 - l3 * r2) / determinant;
        var b = (soft.Log10DecipascalSeconds - a) * (soft.Celsius - t0);
        var isCurve = b > 0 && t0 > PhysicalConstants.AbsoluteZeroCelsius && t0 < Math.Min(soft.Celsius, Math.Min(middle.Celsius, stiff.Celsius));
        return isCurve ? new ViscosityCurve(a, b, t0) : null;
    }

    /// <summary>log10 of the viscosity in dPa·s.</summary>
    /// <param name="celsius">Above T0, °C.</param>
    public double Log10DecipascalSeconds(double celsius) => A + BKelvin / Require.Positive(celsius - T0Celsius);

    /// <summary>Viscosity, Pa·s.</summary>
    /// <param name="celsius">Above T0, °C.</param>
    public double PascalSeconds(double celsius) => Math.Exp((Log10DecipascalSeconds(celsius) - Deci) * Math.Log(10));

    /// <summary>Temperature of a viscosity, °C.</summary>
    /// <param name="log10DecipascalSeconds">Above A.</param>
    public double CelsiusAt(double log10DecipascalSeconds) => T0Celsius + BKelvin / Require.Positive(log10DecipascalSeconds - A);
}

/// <summary>A viscosity that belongs to a temperature.</summary>
public readonly record struct ViscosityPoint(double Log10DecipascalSeconds, double Celsius)
{
    internal double Product => Log10DecipascalSeconds * Celsius;
}
