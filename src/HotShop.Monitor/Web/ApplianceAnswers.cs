using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Web;

public sealed record ChannelAnswer(
    string Id, string Channel, string Quantity, double? Value, string Unit, string Quality, double? AgeSeconds, Instant? At,
    double IntervalSeconds, string Reports, string Topic)
{
    /// <summary>Lower end of the value's 95 % interval, where the sensor's class, its maker's statement or a calibration tells it.</summary>
    public double? ValueLow95 { get; init; }

    /// <summary>Upper end of the value's 95 % interval.</summary>
    public double? ValueHigh95 { get; init; }

    /// <summary>Type of the couple.</summary>
    public string? Thermocouple { get; init; }

    /// <summary>Class of its wire.</summary>
    public string? Tolerance { get; init; }

    /// <summary>The calibration in force for the newest value.</summary>
    public CalibrationAnswer? Calibration { get; init; }
}

/// <param name="From">First moment at which it holds.</param>
/// <param name="CorrectionKelvins">Added to the newest reading.</param>
/// <param name="AsReadCelsius">The newest reading before that.</param>
/// <param name="IsHeld">The reading lies outside what was calibrated: the correction is the nearest one's.</param>
public sealed record CalibrationAnswer(Instant From, string? By, double CorrectionKelvins, double AsReadCelsius, bool IsHeld);

public sealed record PositionAnswer(double X, int Order);

public sealed record ApplianceAnswer(
    string Id, string Appliance, string Name, string Kind, string Mode, Instant? ModeSince, string ModeWho, PositionAnswer Position, IReadOnlyList<ChannelAnswer> Channels);

/// <summary>Appliances with their newest values, as the interfaces give them.</summary>
sealed class ApplianceAnswers(StudioPlan plan, LatestReadings latest, IModes modes)
{
    public IReadOnlyList<ApplianceAnswer> All(Instant now) =>
        [.. plan.Appliances.OrderBy(a => a.Options.Position).Select((a, order) => Of(a, order, now))];

    ApplianceAnswer Of(AppliancePlan appliance, int order, Instant now)
    {
        var mode = modes.Of(appliance.Id);
        return new ApplianceAnswer($"{plan.Site}/{appliance.Id}", appliance.Id, appliance.Name, appliance.Kind.NameOf(), mode.Mode.NameOf(),
            mode.Since == Instant.MinValue ? null : mode.Since, mode.Who, new PositionAnswer(appliance.Options.Position, order),
            [.. appliance.Channels.Select(c => Of(c, now))]);
    }

    public ChannelAnswer Of(ChannelPlan channel, Instant now)
    {
        var reading = latest.Of(channel);
        var interval = TemperatureInterval.Of(channel, plan, latest);
        return new ChannelAnswer($"{plan.Site}/{channel.Id}", channel.Name, channel.Quantity.NameOf(), reading?.Value, channel.Quantity.CanonicalUnit(),
            NameOf(latest.QualityOf(channel, now)), reading is null ? null : Math.Max(0, (now - reading.At).TotalSeconds), reading?.At,
            channel.Interval.TotalSeconds, channel.IsTyped ? "typed" : channel.OnChangeOnly ? "on-change" : "periodic", channel.Topic)
        {
            ValueLow95 = interval?.Budget?.Low95,
            ValueHigh95 = interval?.Budget?.High95,
            Thermocouple = channel.Thermocouple?.ToString(),
            Tolerance = channel.Accuracy?.Class?.Title,
            Calibration = interval is { Calibration: { } calibration, Correction: { } correction, AsReadCelsius: { } asRead }
                ? new(calibration.From, calibration.By, correction.Celsius, asRead, correction.IsHeld) : null,
        };
    }

    static string NameOf(Quality quality) => quality switch
    {
        Quality.OpenCircuit => "open-circuit",
        Quality.NoTerminals => "no-terminals",
        _ => quality.ToString().ToLowerInvariant(),
    };
}
