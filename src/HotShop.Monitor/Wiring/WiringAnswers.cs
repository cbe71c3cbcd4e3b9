using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Wiring;

/// <summary>A place in the last payload, with what it most likely is and what it would be read as.</summary>
/// <param name="ReadValue">In <paramref name="ReadUnit"/> (UCUM), as the proposed channel would store it; null without a proposal that reads it.</param>
public sealed record CandidateAnswer(
    string? ValuePointer, string Text, bool IsTime, string? Appliance, string? Channel, string? Quantity, string? Unit, string? Why, double? ReadValue, string? ReadUnit);

/// <param name="Topic">Full topic, as sent by whoever sent it: text, never markup.</param>
/// <param name="Sample">Beginning of the last payload.</param>
/// <param name="InUse">Channels that read other values of the topic.</param>
public sealed record UnknownTopicAnswer(
    string Topic, long Count, Instant Since, Instant LastAt, string Sample, int PayloadBytes, bool IsLastValue, string? Sender, string? TurnedAway,
    double? IntervalSeconds, bool ReportsOnChange, IReadOnlyList<string> InUse, IReadOnlyList<CandidateAnswer> Candidates)
{
    /// <summary>Where the payload says when it was measured, as far as one place alone can be it.</summary>
    public string? TimePointer { get; init; }
}

public sealed record AddedChannelAnswer(string Appliance, string Channel, string Quantity, string Topic, string? ValuePointer, string? AddedAt, string? NotInForce);

/// <param name="Units">Units to offer for each quantity that has any (UCUM), its own first.</param>
public sealed record WiringAnswer(bool CanAdd, IReadOnlyList<UnknownTopicAnswer> Topics, IReadOnlyList<AddedChannelAnswer> Added, IReadOnlyDictionary<string, IReadOnlyList<string>> Units);

/// <summary>What the set-up page asks about topics that nobody has claimed.</summary>
sealed class WiringAnswers(StudioPlan plan, UnknownTopics unknown, ChannelDesk desk)
{
    static readonly IReadOnlyDictionary<string, IReadOnlyList<string>> units =
        Enum.GetValues<Quantity>().ToDictionary(q => q.NameOf(), q => q.IsState() ? (IReadOnlyList<string>)[] : [.. Ucum.Codes(q)]);

    static readonly Duration nearTime = Duration.FromHours(2);

    public WiringAnswer All() => new(desk.IsOpen, [.. unknown.All.Select(Topic).OfType<UnknownTopicAnswer>()], [.. desk.Added.Select(Added)], units);

    AddedChannelAnswer Added(AddedChannel added) => new(added.Appliance, added.Channel.Id, added.Channel.Quantity,
        plan.Channels.Find(added.Id)?.Topic ?? added.Channel.Topic ?? "", added.Channel.ValuePointer, added.AddedAt,
        AddedChannels.InForce(plan, added) ? null : "hotshop.json has a channel of this name itself, or its appliance no more");

    /// <summary>Null where every value of the topic that could be one is in use.</summary>
    UnknownTopicAnswer? Topic(UnknownTopic topic)
    {
        var listening = plan.Channels.ForTopic(topic.Topic);
        // A channel without a pointer takes the whole message.
        if (listening.Any(c => c.ValuePointer is null) || plan.Channels.Button(topic.Topic) is not null) return null;
        var taken = listening.SelectMany(c => new[] { c.ValuePointer, c.TimePointer }).ToHashSet(StringComparer.Ordinal);
        var candidates = (topic.Payload is { } payload ? PayloadValue.Of(payload) : []).Where(v => !taken.Contains(v.Pointer)).Select(v => Candidate(topic, v)).OrderByDescending(c => c.Quantity is not null).ToList();
        if (listening.Count > 0 && candidates.All(c => c.IsTime)) return null;
        var habit = TopicHabit.Of(topic.Arrivals);
        return new(topic.Topic, topic.Count, topic.Since, topic.LastAt, Printable.Beginning(topic.Payload), topic.PayloadBytes, topic.IsLastValue, topic.Sender, topic.TurnedAway,
            habit.IntervalSeconds, habit.IsOnChange, [.. listening.Select(c => c.Id)], candidates) { TimePointer = TimeOf(topic) };
    }

    /// <summary>A time long before the message is when the device was made or started, not when it measured.</summary>
    static string? TimeOf(UnknownTopic topic) =>
        topic.Payload is { } payload && PayloadValue.Of(payload).Where(v => v is { Pointer: not null, Time: { } at } && (topic.LastAt - at) is var ago && ago > -nearTime && ago < nearTime).ToList() is [var only] ? only.Pointer : null;

    CandidateAnswer Candidate(UnknownTopic topic, PayloadValue value)
    {
        var proposal = ChannelProposal.Of(topic.Topic, value, plan);
        WireReading? reading = proposal is not null && TrialReading.Of(plan, new ChannelPlan
        {
            Appliance = proposal.Appliance ?? "", Name = proposal.Channel, Topic = topic.Topic, Quantity = proposal.Quantity, DefaultUnit = proposal.Unit, ValuePointer = value.Pointer,
        }, topic.Payload!, topic.LastAt).Readings is [.., var last] ? last : null;
        return new(value.Pointer, value.Text, value.Time is not null, proposal?.Appliance, proposal?.Channel, proposal?.Quantity.NameOf(), proposal?.Unit, proposal?.Why, reading?.Value, reading?.Unit);
    }
}
