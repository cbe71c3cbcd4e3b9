using HotShop.Physics.Glass;
using NodaTime;

namespace HotShop.Physics.Annealing;

/// <summary>What a curve means for a glass: how hot it gets against the points at which stress leaves, and how it passes between them.
/// Whether a rate suits a piece depends on its thickness, which is not asked here.</summary>
/// <param name="HighestCelsius">Of the curve, °C.</param>
/// <param name="AboveStrainPoint">How long the curve stays at the strain point or above it.</param>
/// <param name="FastestCoolingKelvinPerHour">Fastest fall between annealing and strain point, where lasting stress is made, K/h; 0 where it does
/// not pass.</param>
public sealed record CurveInGlass(double HighestCelsius, Duration AboveStrainPoint, double FastestCoolingKelvinPerHour)
{
    public static CurveInGlass Of(AnnealingCurve curve, GlassProfile glass)
    {
        ArgumentNullException.ThrowIfNull(curve);
        ArgumentNullException.ThrowIfNull(glass);
        var (corners, strain, annealing) = (curve.Corners, glass.StrainPointCelsius, glass.AnnealingPointCelsius);
        var (above, fastest) = (Duration.Zero, 0.0);
        for (var i = 1; i < corners.Count; i++)
        {
            var (from, to) = (corners[i - 1], corners[i]);
            above += (to.At - from.At) * ShareAbove(strain, from.Celsius, to.Celsius);
            if (from.Celsius > strain && to.Celsius < annealing && to.Celsius < from.Celsius)
                fastest = Math.Max(fastest, (from.Celsius - to.Celsius) / (to.At - from.At).TotalHours);
        }
        return new CurveInGlass(corners.Max(c => c.Celsius), above, fastest);
    }

    /// <summary>Share of a straight piece that lies at a temperature or above it.</summary>
    static double ShareAbove(double celsius, double from, double to)
    {
        var (low, high) = (Math.Min(from, to), Math.Max(from, to));
        return celsius <= low ? 1 : celsius > high ? 0 : (high - celsius) / (high - low);
    }
}
