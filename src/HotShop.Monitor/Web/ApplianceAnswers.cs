using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Web;

public sealed record ChannelAnswer(
    string Id, string Channel, string Quantity, double? Value, string Unit, string Quality, double? AgeSeconds, Instant? At,
    double IntervalSeconds, string Reports, string Topic);

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
        return new ChannelAnswer($"{plan.Site}/{channel.Id}", channel.Name, channel.Quantity.NameOf(), reading?.Value, channel.Quantity.CanonicalUnit(),
            NameOf(latest.QualityOf(channel, now)), reading is null ? null : Math.Max(0, (now - reading.At).TotalSeconds), reading?.At,
            channel.Interval.TotalSeconds, channel.IsTyped ? "typed" : channel.OnChangeOnly ? "on-change" : "periodic", channel.Topic);
    }

    static string NameOf(Quality quality) => quality switch
    {
        Quality.OpenCircuit => "open-circuit",
        Quality.NoTerminals => "no-terminals",
        _ => quality.ToString().ToLowerInvariant(),
    };
}
