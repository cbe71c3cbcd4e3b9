using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Physics.Thermometry;

/// <summary>A working sensor beside a better one in the same place at several temperatures: the line of its correction over its reading.</summary>
/// <remarks>Source: JCGM 100:2008 (GUM), H.3, where a thermometer is calibrated so. The line averages the scatter of the comparison; what the better
/// sensor itself may be off by does not average out and is added.</remarks>
public sealed class CoupleComparison
{
    readonly LinearFit line;
    readonly double centreCelsius, referenceStandardCelsius;

    CoupleComparison(LinearFit line, double centreCelsius, double referenceStandardCelsius, double lowestCelsius, double highestCelsius) =>
        (this.line, this.centreCelsius, this.referenceStandardCelsius, LowestCelsius, HighestCelsius) = (line, centreCelsius, referenceStandardCelsius, lowestCelsius, highestCelsius);

    /// <summary>Lowest reading compared, in °C.</summary>
    public double LowestCelsius { get; }

    /// <summary>Highest reading compared, in °C.</summary>
    public double HighestCelsius { get; }

    /// <summary>Scatter about the line, one standard deviation, in °C.</summary>
    public double ScatterCelsius => line.ResidualStandardDeviation;

    /// <param name="pairs">What the working and the better sensor read at one time, in °C; three or more, at two readings or more.</param>
    /// <param name="referenceStandardCelsius">Standard uncertainty of the better sensor, in °C.</param>
    /// <returns><see langword="null"/> where the pairs determine no line.</returns>
    public static CoupleComparison? Of(IReadOnlyList<(double WorkingCelsius, double ReferenceCelsius)> pairs, double referenceStandardCelsius)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        Require.NotNegative(referenceStandardCelsius);
        if (pairs.Count == 0) return null;
        // About the centre of the readings constant and slope hardly depend on each other.
        var centre = pairs.Average(p => p.WorkingCelsius);
        return LinearFit.Line([.. pairs.Select(p => p.WorkingCelsius - centre)], [.. pairs.Select(p => p.ReferenceCelsius - p.WorkingCelsius)]) is { } line
            ? new(line, centre, referenceStandardCelsius, pairs.Min(p => p.WorkingCelsius), pairs.Max(p => p.WorkingCelsius))
            : null;
    }

    /// <summary>The correction at a reading with its uncertainty, in °C.</summary>
    public Budget CorrectionAt(double readingCelsius)
    {
        var there = line.At(1, readingCelsius - centreCelsius);
        return new(there.Value,
            new Contribution("scatter of the comparison", there.StandardUncertainty, DegreesOfFreedom: line.DegreesOfFreedom),
            new Contribution("better sensor", referenceStandardCelsius) { IsCommon = true });
    }
}
