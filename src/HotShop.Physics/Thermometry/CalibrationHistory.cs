using NodaTime;

namespace HotShop.Physics.Thermometry;

/// <summary>A calibration with the moment from which it holds.</summary>
/// <param name="StandardUncertaintyCelsius">Of its corrections, in °C; null where none was stated.</param>
/// <param name="By">Who made it.</param>
public sealed record DatedCalibration(Instant From, CalibrationCurve Curve, double? StandardUncertaintyCelsius, string? By);

/// <summary>Calibrations of one instrument over time: each holds from its moment until the next begins. Immutable.</summary>
public sealed class CalibrationHistory
{
    readonly DatedCalibration[] calibrations;

    /// <param name="calibrations">In any order, no two from the same moment.</param>
    public CalibrationHistory(IEnumerable<DatedCalibration> calibrations)
    {
        ArgumentNullException.ThrowIfNull(calibrations);
        this.calibrations = [.. calibrations.OrderBy(c => c.From)];
        for (var i = 1; i < this.calibrations.Length; i++)
            if (this.calibrations[i].From == this.calibrations[i - 1].From)
                throw new ArgumentException($"two calibrations from {this.calibrations[i].From}", nameof(calibrations));
    }

    /// <summary>No calibration at any time.</summary>
    public static CalibrationHistory None { get; } = new([]);

    /// <summary>In order of time.</summary>
    public IReadOnlyList<DatedCalibration> All => calibrations;

    /// <summary>The calibration in force.</summary>
    /// <returns><see langword="null"/> before the first.</returns>
    public DatedCalibration? At(Instant at)
    {
        for (var i = calibrations.Length - 1; i >= 0; i--) if (calibrations[i].From <= at) return calibrations[i];
        return null;
    }

    /// <summary>A reading with the correction in force added, in °C.</summary>
    public double Corrected(double readingCelsius, Instant at) =>
        At(at) is { } calibration ? readingCelsius + calibration.Curve.At(readingCelsius).Celsius : readingCelsius;
}
