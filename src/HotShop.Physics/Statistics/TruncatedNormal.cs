using MathNet.Numerics.Distributions;

namespace HotShop.Physics.Statistics;

/// <summary>A standard normal of which only the part above a bound can be true.</summary>
internal static class TruncatedNormal
{
    /// <summary>Mean and variance above a bound, in standard deviations.</summary>
    /// <param name="bound">Up to about 8; beyond it the tail's digits run out.</param>
    public static (double Mean, double Variance) Above(double bound)
    {
        var tail = Normal.CDF(0, 1, -bound);
        var mean = Normal.PDF(0, 1, bound) / tail;
        return (mean, Math.Max(0, 1 + bound * mean - mean * mean));
    }
}
