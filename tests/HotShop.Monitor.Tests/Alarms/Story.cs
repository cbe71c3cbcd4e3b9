using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using HotShop.Physics.Annealing;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>
/// A night in the studio, told in steps. Every channel with a value sends it every ten seconds, the clock ticks as often;
/// what rings is in <see cref="Rang"/>.
/// </summary>
sealed class Story
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 1, 1, 0);   // 02:00 in Berlin
    static readonly Duration Interval = Duration.FromSeconds(10);

    readonly Dictionary<string, Func<Instant, double>> values = [];
    readonly List<AlarmTransition> happened = [];

    public Story(StudioPlan? plan = null)
    {
        Engine = new AlarmEngine(plan ?? TestStudio.Plan);
        Memory = Engine.Begin(Now);
        Usual();
        Run(Duration.FromMinutes(2));
    }

    public AlarmEngine Engine { get; }
    public StudioMemory Memory { get; private set; }
    public Instant Now { get; private set; } = Start - Duration.FromMinutes(2);
    public IReadOnlyList<AlarmTransition> Happened => happened;

    /// <summary>Alarms raised, in order, as ids; those that call nobody are left out.</summary>
    public IReadOnlyList<string> Rang => [.. happened.Where(t => t.Change == AlarmChange.Raised && t.Occurrence.Priority < 3).Select(t => t.Occurrence.AlarmId)];

    public IReadOnlyList<string> Raised => [.. happened.Where(t => t.Change == AlarmChange.Raised).Select(t => t.Occurrence.AlarmId)];

    public AlarmTransition Only(AlarmChange change) => Assert.Single(happened, t => t.Change == change);

    /// <summary>Everything as it should be.</summary>
    void Usual()
    {
        foreach (var channel in Engine.Channels)
            values[channel.Id] = _ => (channel.Id, channel.Quantity.CanonicalUnitOf()) switch
            {
                ("furnace-1/terminal", _) => 35,
                (var id, "Cel") when id.StartsWith("annealer", StringComparison.Ordinal) => 495,
                (_, "Cel") => 1150,
                (_, "m3/h") => 2,
                ("furnace-1/flame" or "furnace-1/call-for-heat" or "glory-hole-1/flame" or "shop/mains", _) => 1,
                _ => 0,
            };
    }

    public Story Set(string channel, double value)
    {
        values[channel] = _ => value;
        return this;
    }

    /// <summary>From now on changes by so much per hour.</summary>
    public Story Slope(string channel, double from, double perHour)
    {
        var since = Now;
        values[channel] = at => from + perHour * (at - since).TotalHours;
        return this;
    }

    public Story Silent(params string[] channels)
    {
        foreach (var channel in channels) values.Remove(channel);
        return this;
    }

    public Story SilentAppliance(string appliance) => Silent([.. values.Keys.Where(c => c.StartsWith(appliance + "/", StringComparison.Ordinal))]);

    public Story SetMode(string appliance, Mode mode) => Do(new AlarmEvent.ModeSet(appliance, new ModeInForce(mode, Now, "somebody"), Now));

    public Story Curve(string appliance, AnnealingCurve? curve) => Do(new AlarmEvent.CurveSet(appliance, curve));

    public Story Part(string part, bool isWorking, string detail = "the broker cannot be reached") =>
        Do(new AlarmEvent.PartReported(new PartHealth(part, isWorking, detail, Now)));

    public Story Acknowledge(AlarmOccurrence occurrence, string who = "Ida") => Do(new AlarmEvent.Acknowledged(occurrence.Id, who, Now));

    /// <summary>The service is away: nothing is heard; then it is there again with what it had stored.</summary>
    public Story Downtime(Duration span)
    {
        Now += span;
        Memory = Memory with { StartedAt = Now, Channels = [.. Memory.Channels.Select(_ => ChannelMemory.Nothing)] };
        return this;
    }

    public Story Minutes(double minutes) => Run(Duration.FromMinutes(minutes));

    public Story Seconds(double seconds) => Run(Duration.FromSeconds(seconds));

    public Story Run(Duration span)
    {
        for (var end = Now + span; Now < end;)
        {
            Now += Interval;
            foreach (var channel in Engine.Channels)
                if (values.TryGetValue(channel.Id, out var value))
                    Do(new AlarmEvent.Sample(channel.Id, Now, value(Now), value(Now) >= channel.PlausibleLow && value(Now) <= channel.PlausibleHigh, Now));
            Do(new AlarmEvent.Tick(Now));
        }
        return this;
    }

    public Story Do(AlarmEvent step)
    {
        var (memory, transitions) = Engine.Step(Memory, step);
        Memory = memory;
        happened.AddRange(transitions);
        return this;
    }
}

static class QuantityWords
{
    public static string CanonicalUnitOf(this HotShop.Monitor.Wire.Quantity quantity) => HotShop.Monitor.Wire.Quantities.CanonicalUnit(quantity);
}
