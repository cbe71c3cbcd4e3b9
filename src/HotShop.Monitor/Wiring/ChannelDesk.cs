using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Wiring;

/// <summary>Adds channels to the file beside the configuration, and takes them out again. Each is tried on the last message of its topic first.</summary>
/// <param name="fresh">None where the service's channels are fixed, as in a demo.</param>
sealed class ChannelDesk(StudioPlan plan, UnknownTopics unknown, FreshStart? fresh = null)
{
    static readonly Lock gate = new();

    /// <summary>Whether channels can be added at all.</summary>
    public bool IsOpen => fresh is not null;

    public IReadOnlyList<AddedChannel> Added => AddedChannels.Read(plan.DataDirectory);

    /// <returns>Null: it is in the file. Else what is wrong with it, one sentence a problem.</returns>
    /// <exception cref="ConfigurationException">The files as they are now could not be started with.</exception>
    public string? Add(string appliance, ChannelOptions channel, Instant now)
    {
        lock (gate)
        {
            var next = fresh!.Read();
            if (next.Appliance(appliance) is null) return $"there is no appliance '{Shown.Short(appliance)}': name one of {string.Join(", ", next.Appliances.Select(a => a.Id))}";
            if (next.Channels.Find($"{appliance}/{channel.Id}") is not null) return $"{appliance} has a channel '{channel.Id}' already: choose another id";
            var added = new AddedChannel { Appliance = appliance, Channel = channel, AddedAt = InstantPattern.General.Format(now) };
            var with = AddedChannels.Merge(next.Configuration, [added]);
            var problems = ConfigurationCheck.Problems(with, "");
            if (problems.Count > 0) return string.Join(" ", problems.Select(p => $"{p.Where[(p.Where.LastIndexOf('.') + 1)..]}: {p.What}; {p.WhatToDo}."));
            if (Trial(PlanBuilder.Build(with, next.BaseDirectory).Channels.Find(added.Id)!) is { } objection) return objection;
            AddedChannels.Write(plan.DataDirectory, [.. Added.Where(a => a.Id != added.Id), added]);
            return null;
        }
    }

    /// <returns>False where no such channel was added here.</returns>
    public bool Remove(string appliance, string channel)
    {
        lock (gate)
        {
            var all = Added;
            var rest = all.Where(a => a.Id != $"{appliance}/{channel}").ToList();
            if (rest.Count == all.Count) return false;
            AddedChannels.Write(plan.DataDirectory, rest);
            return true;
        }
    }

    /// <summary>What the last message on its topic would become: the same reading as when it comes the next time.</summary>
    string? Trial(ChannelPlan channel)
    {
        if (unknown.Find(channel.Topic) is not { Payload: { } payload } topic) return null;
        var content = TrialReading.Of(plan, channel, payload, topic.LastAt);
        if (content.Refusals is [{ } refusal, ..] && content.Readings.Count == 0) return $"The last message on this topic could not be read so: {refusal.Reason}.";
        return content.Readings is [.., var reading] && Intake.Plausibility(channel, reading.Value) != ReadingMarks.None
            ? $"The last message would be {reading.Value:0.##} {reading.Unit}, which is not plausible for {channel.Appliance}: is the unit right, and the appliance?"
            : null;
    }
}
