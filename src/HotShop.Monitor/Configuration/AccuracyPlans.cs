using HotShop.Physics.Thermometry;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

/// <summary>Turns checked accuracy and calibrations into what readings are corrected and judged by.</summary>
static class AccuracyPlans
{
    /// <summary>Coverage factor of what certificates print.</summary>
    const double CertificateFactor = 2;

    public static CalibrationHistory Calibrations(ChannelOptions channel, DateTimeZone zone) => channel.Calibrations.Count == 0 ? CalibrationHistory.None : new(channel.Calibrations.Select(c => new DatedCalibration(
        zone.AtStartOfDay(LocalDatePattern.Iso.Parse(c.From).Value).ToInstant(),
        new CalibrationCurve(c.Points.Select(p => new CalibrationPoint(p.ReadingCelsius!.Value, p.CorrectionKelvins!.Value))), Kelvins(c.Uncertainty) / CertificateFactor, c.By)));

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
