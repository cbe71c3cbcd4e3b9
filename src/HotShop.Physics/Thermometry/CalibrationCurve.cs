namespace HotShop.Physics.Thermometry;

/// <summary>What a calibration found at one reading.</summary>
/// <param name="ReadingCelsius">What the instrument read, in °C.</param>
/// <param name="CorrectionCelsius">What is added to the reading to get the truth, in °C.</param>
public sealed record CalibrationPoint(double ReadingCelsius, double CorrectionCelsius)
{
    public double ReadingCelsius { get; } = Require.Celsius(ReadingCelsius);

    public double CorrectionCelsius { get; } = Require.Finite(CorrectionCelsius);
}

/// <summary>A correction at a reading.</summary>
/// <param name="Celsius">Added to the reading, in °C.</param>
/// <param name="IsHeld">The reading lies outside the calibrated readings: the correction is that of the nearest, and nobody knows how good it is.</param>
public readonly record struct Correction(double Celsius, bool IsHeld);

/// <summary>Corrections of a calibration: piecewise linear between its points, held flat outside them. Immutable.</summary>
/// <remarks>Straight lines between points are what a certificate's table supports: it says nothing of what lies between, and a curve bent
/// through few points swings. Beyond the ends nothing was measured, so nothing is extrapolated.</remarks>
public sealed class CalibrationCurve
{
    readonly CalibrationPoint[] points;

    /// <param name="points">One or more, in any order, no two at the same reading.</param>
    public CalibrationCurve(IEnumerable<CalibrationPoint> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        this.points = [.. points.OrderBy(p => p.ReadingCelsius)];
        if (this.points.Length == 0) throw new ArgumentException("expected at least one point", nameof(points));
        for (var i = 1; i < this.points.Length; i++)
            if (this.points[i].ReadingCelsius == this.points[i - 1].ReadingCelsius)
                throw new ArgumentException($"two points at {this.points[i].ReadingCelsius} °C", nameof(points));
    }

    /// <summary>In ascending order of the reading.</summary>
    public IReadOnlyList<CalibrationPoint> Points => points;

    /// <summary>Correction of a reading; allocates nothing.</summary>
    /// <param name="readingCelsius">As the instrument reads, in °C.</param>
    public Correction At(double readingCelsius)
    {
        Require.Finite(readingCelsius);
        var above = 0;
        while (above < points.Length && points[above].ReadingCelsius < readingCelsius) above++;
        if (above == points.Length) return new Correction(points[^1].CorrectionCelsius, IsHeld: true);
        var upper = points[above];
        if (above == 0) return new Correction(upper.CorrectionCelsius, IsHeld: readingCelsius < upper.ReadingCelsius);
        var lower = points[above - 1];
        var share = (readingCelsius - lower.ReadingCelsius) / (upper.ReadingCelsius - lower.ReadingCelsius);
        return new Correction(double.Lerp(lower.CorrectionCelsius, upper.CorrectionCelsius, share), IsHeld: false);
    }
}
