using HotShop.Monitor.Configuration;
using HotShop.Monitor.Live;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>
/// Takes messages into the store: one piece of one transaction each, with the alarm transitions it causes.
/// Whoever waits for <see cref="Accept"/> knows that everything in the message is kept, as a reading, a log entry or a refusal.
/// </summary>
sealed partial class Intake(
    StudioPlan plan, IStoreWriter writer, SeriesBook series, ArrivalBook arrivals, LatestReadings latest, RecentSamples recent,
    IEnumerable<IReadingStage> stages, ILogEntryStage logbook, IUnclaimedStage unclaimed, LiveFeed live, ILogger<Intake> log) : IIntake
{
    static readonly Duration FutureTolerance = Duration.FromMinutes(2), Microsecond = Duration.FromTicks(10);
    static readonly Duration TerminalsHold = Duration.FromHours(1), TerminalsFollow = Duration.FromMinutes(1);
    static readonly Instant Earliest = Instant.FromUtc(2020, 1, 1, 0, 0);

    readonly MessageReader reader = new(plan.Channels);
    readonly IReadOnlyList<IReadingStage> stages = [.. stages];
    readonly Duration kept = Duration.FromDays(plan.Configuration.Store.RawDays);

    public async Task Accept(IncomingMessage message, CancellationToken stop)
    {
        var content = reader.Read(message);
        // Another household's thousand topics must neither wear out the disk nor push what matters off the refused list.
        if (content.MayHoldMore && unclaimed.Notice(message, plan.Channels)) return;
        try
        {
            await writer.Write(scope => Apply(message, content, stages, scope), stop);
        }
        catch (Exception fault) when (fault is not (StoreException or OperationCanceledException))
        {
            Tripped(message.Topic, fault);
            await AcceptBare(message, content, stop);
        }
    }

    /// <summary>A fault in what reacts to readings must not cost the readings; a message that trips all the same must not come again for ever: it is kept as refused.</summary>
    async Task AcceptBare(IncomingMessage message, WireContent content, CancellationToken stop)
    {
        try
        {
            await writer.Write(scope => Apply(message, content, [], scope), stop);
        }
        catch (Exception fault) when (fault is not (StoreException or OperationCanceledException))
        {
            Tripped(message.Topic, fault);
            await writer.Write(scope => RefusedList.Add(message, $"could not be taken because of a fault in the service ({fault.GetType().Name}); please report it", scope), stop);
        }
    }

    bool Apply(IncomingMessage message, WireContent content, IReadOnlyList<IReadingStage> reacting, WriteScope scope)
    {
        if (message.Redelivered) scope.Count(Counters.Redelivered);
        foreach (var refusal in content.Refusals) RefusedList.Add(message, refusal.Reason, scope);
        if (content.Entry is { } entry && logbook.Take(entry, message.ArrivedAt, scope) is { } reason) RefusedList.Add(message, reason, scope);
        if (content.Readings.Count == 0) return true;

        var stored = new List<StoredReading>(content.Readings.Count + 1);
        foreach (var row in content.Readings) Take(message, row, stored, scope);
        if (stored.Count == 0) return true;
        foreach (var stage in reacting) stage.React(stored, scope);
        scope.OnCommit(() => Adopt(stored));
        return true;
    }

    void Take(IncomingMessage message, WireReading row, List<StoredReading> stored, WriteScope scope)
    {
        var (at, marks) = TimeOf(row, message.ArrivedAt);
        if ((marks & ReadingMarks.ImpossibleTime) != 0) scope.Count(Counters.ImpossibleTime);
        if (message.Retained && (marks & ReadingMarks.ArrivalTime) != 0)
        {
            // A last value of unknown age tells nothing about now, and nothing about any other moment.
            scope.Count(Counters.RetainedWithoutTime);
            return;
        }
        if (at < message.ArrivedAt - kept)
        {
            scope.Count(Counters.TooOld);
            RefusedList.Add(message, $"the reading of {at} is older than the {kept.Days} days that raw readings are kept; import it as history instead", scope);
            return;
        }
        if (message.Retained) marks |= ReadingMarks.Retained;
        var isLate = message.ArrivedAt - at > row.Channel.LiveLag;
        if (isLate && !message.Retained)
        {
            marks |= ReadingMarks.Late;
            scope.Count(Counters.Late);
        }
        var isLive = !isLate && !message.Retained;
        if (row.Unit == Quantities.Millivolt)
        {
            var (celsius, why) = Temperatures.Of(row.Channel, row.Value, TerminalsAt(row.Channel, at, stored, scope));
            Store(row.Channel, row.Unit, row.Value, marks | why);
            if (celsius is { } value) Keep(value);
        }
        else Keep(row.Value);

        // A correction takes nothing away: what was read stays beside what is gone by.
        void Keep(double value)
        {
            var unit = row.Channel.Quantity.CanonicalUnit();
            if (Temperatures.Corrected(row.Channel, value, at) is not { } corrected) Store(row.Channel, unit, value, marks | Plausibility(row.Channel, value));
            else
            {
                Store(row.Channel, Quantities.AsRead, value, marks);
                Store(row.Channel, unit, corrected, marks | Plausibility(row.Channel, corrected));
            }
        }

        void Store(ChannelPlan channel, string unit, double value, ReadingMarks allMarks)
        {
            var one = series.FindOrMake(channel.Id, unit, scope);
            var when = at;
            // Arrival stamps are ours to keep apart: two readings in the same microsecond are two readings.
            if ((allMarks & ReadingMarks.ArrivalTime) != 0) while (arrivals.Has(one.Id, when, scope)) when += Microsecond;
            if (arrivals.Add(one, channel, when, value, allMarks, message.ArrivedAt, scope) == ArrivalResult.Stored)
                stored.Add(new StoredReading(channel, unit, when, value, allMarks, isLive, message.ArrivedAt));
        }
    }

    static (Instant At, ReadingMarks Marks) TimeOf(WireReading row, Instant arrived) => row.At switch
    {
        null => (arrived.Whole(), ReadingMarks.ArrivalTime),
        { } at when at > arrived + FutureTolerance || at < Earliest => (arrived.Whole(), ReadingMarks.ArrivalTime | ReadingMarks.ImpossibleTime),
        { } at => (at.Whole(), ReadingMarks.None),
    };

    internal static ReadingMarks Plausibility(ChannelPlan channel, double value) =>
        value < channel.PlausibleLow || value > channel.PlausibleHigh ? ReadingMarks.Implausible : ReadingMarks.None;

    /// <summary>The terminals' temperature at or last before a moment, at most an hour old, as it moves slowly; else the first within a minute after it.</summary>
    double? TerminalsAt(ChannelPlan channel, Instant at, List<StoredReading> sameMessage, WriteScope scope)
    {
        if (channel.ColdJunction is not { } id || plan.Channels.Find(id) is not { } junction || series.Of(junction) is not { } one) return null;
        foreach (var other in sameMessage) if (other.Channel.Id == id && other.IsCanonical && other.IsPlausible) return other.Value;
        var samples = recent.Of(one.Id);
        for (var i = samples.Count - 1; i >= 0; i--) if (samples[i].At <= at && samples[i].At >= at - TerminalsHold) return samples[i].Value;
        return NearestTerminals(scope.Connection, one.Id, at);
    }

    /// <summary>The same from what is stored.</summary>
    internal static double? NearestTerminals(SqliteConnection connection, int terminals, Instant at)
    {
        var near = SampleRows.WithNeighbours(connection, terminals, at - TerminalsHold, at + TerminalsFollow).Where(s => s.At >= at - TerminalsHold && s.At <= at + TerminalsFollow).ToList();
        if (near.Count == 0) return null;
        var before = near.FindLastIndex(s => s.At <= at);
        return near[Math.Max(0, before)].Value;
    }

    void Adopt(List<StoredReading> stored)
    {
        latest.Adopt(stored);
        foreach (var reading in stored)
        {
            if (!reading.IsCanonical) continue;
            if (reading.IsPlausible) recent.Add(series.Find(reading.Channel.Id, reading.Unit)!.Id, new Sample(reading.At, reading.Value));
            if (latest.IsNewest(reading)) live.Publish(new LiveEvent("reading", reading.Channel.Id, reading));
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A message on {Topic} tripped over a fault in the service and was set aside")]
    private partial void Tripped(string topic, Exception fault);
}
