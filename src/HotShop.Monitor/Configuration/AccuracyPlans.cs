using HotShop.Physics.Statistics;
using HotShop.Physics.Thermometry;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

/// <summary>Turns checked accuracy and calibrations into what readings are corrected and judged by.</summary>
static class AccuracyPlans
{
    /// <summary>Coverage factor of what certificates print.</summary>
    const double CertificateFactor = 2;

    public static CalibrationHistory Calibrations(ChannelOptions channel, DateTimeZone zone) => channel.Calibrations.Count == 0 ? CalibrationHistory.None : new(channel.Calibrations.Select(c =>
    {
        var (curve, standard) = Curve(c);
        return new DatedCalibration(zone.AtStartOfDay(LocalDatePattern.Iso.Parse(c.From).Value).ToInstant(), curve, standard, c.By);
    }));

    static (CalibrationCurve Curve, double? StandardCelsius) Curve(CalibrationOptions calibration)
    {
        var points = calibration.Points.Select(p => new CalibrationPoint(p.ReadingCelsius!.Value, p.CorrectionKelvins!.Value)).ToList();
        if (Kelvins(calibration.ReferenceUncertainty) is not { } reference) return (new CalibrationCurve(points), Kelvins(calibration.Uncertainty) / CertificateFactor);
        var line = CoupleComparison.Of([.. points.Select(p => (p.ReadingCelsius, p.ReadingCelsius + p.CorrectionCelsius))], reference / CertificateFactor)!;
        double[] ends = [line.LowestCelsius, line.HighestCelsius];
        var corrections = ends.Select(line.CorrectionAt).ToList();
        // A line is least sure at its ends: what holds there holds between.
        return (new CalibrationCurve(ends.Zip(corrections, (end, correction) => new CalibrationPoint(end, correction.Value))), corrections.Max(c => c.HalfWidth95) / Quantiles.Normal95);
    }

    public static TemperatureUncertainty? Uncertainty(ChannelOptions channel) => channel.Accuracy is not { } accuracy ? null : new()
    {
        Couple = channel.Thermocouple is { } type ? Enum.Parse<ThermocoupleType>(type) : null,
        Class = accuracy.Tolerance is { } name ? ToleranceClass.Find(name) : null,
        StatedCelsius = Kelvins(accuracy.Stated) ?? 0,
        InputMicrovolts = accuracy.InputMicrovolts ?? 0,
        TerminalsCelsius = Kelvins(accuracy.Terminals) ?? 0,
        DriftCelsius = Kelvins(accuracy.Drift) ?? 0,
    };

    static double? Kelvins(string? text) => text is null ? null : Limit.Parse(text)!.Kelvins;
}
