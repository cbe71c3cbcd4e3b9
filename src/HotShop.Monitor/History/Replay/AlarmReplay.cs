using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>
/// Decides the alarms of a span again: the same engine as live, on the readings that were live, with the modes, curves and limits of their time. Nobody is
/// told, and the history of alarms is a fact: what differs is listed.
/// </summary>
/// <remarks>
/// What cannot be known afterwards is left out: troubles of the service itself, and silence while nothing at all was stored, when the service may have been
/// down. Live, silence counts from the arrival, which is not kept: it is the same here when it begins within a minute.
/// </remarks>
sealed class AlarmReplay(PlanHistory plans, SeriesBook series, ModeHistory modes, LoadBook loads, IStoreReader store)
{
    /// <summary>The engine looks at its clock this often here; live it is a second. A silence begins with the last reading either way.</summary>
    static readonly Duration tick = Duration.FromSeconds(10);

    /// <summary>Long enough for what rules remember: half a day of gas, the last setpoint of an annealer.</summary>
    static readonly Duration warmUp = Duration.FromDays(2);

    static readonly Duration tolerance = Duration.FromMinutes(1);

    public ReplayPart Run(Instant from, Instant to, CancellationToken stop)
    {
        var tally = new PartTally("alarms");
        var decided = Decide(from, to, stop).Where(o => o.Since >= from).ToList();
        using var connection = store.Open();
        var known = OccurrenceRows.Between(connection, from, to).Where(o => o.Since >= from && o.Kind != AlarmKinds.ServiceTrouble).ToList();
        foreach (var occurrence in decided)
        {
            tally.Checked++;
            if (Same(occurrence, known) is { } same) known.Remove(same);
            else tally.Differs(occurrence.AlarmId, occurrence.Since, "not in the history", occurrence.Words.Sentence);
        }
        foreach (var occurrence in known) tally.Differs(occurrence.AlarmId, occurrence.Since, occurrence.Words.Sentence, "would not ring");
        return tally.Part;
    }

    static AlarmOccurrence? Same(AlarmOccurrence decided, List<AlarmOccurrence> known) =>
        known.Find(o => o.Id == decided.Id)
        ?? known.Where(o => o.AlarmId == decided.AlarmId && Apart(o.Since, decided.Since) <= tolerance).MinBy(o => Apart(o.Since, decided.Since));

    static Duration Apart(Instant a, Instant b) => a > b ? a - b : b - a;

    List<AlarmOccurrence> Decide(Instant from, Instant to, CancellationToken stop)
    {
        var raised = new List<AlarmOccurrence>();
        StudioMemory? memory = null;
        AlarmEngine? before = null;
        foreach (var stretch in plans.Between(from - warmUp, to))
        {
            var engine = new AlarmEngine(stretch.Plan);
            memory = Carried(engine, before, memory, stretch.From);
            memory = Through(engine, memory, stretch, raised, stop);
            before = engine;
        }
        return raised;
    }

    /// <summary>A changed configuration is a new engine; what is under way goes on in it, as over a restart.</summary>
    static StudioMemory Carried(AlarmEngine engine, AlarmEngine? before, StudioMemory? memory, Instant now)
    {
        var begun = engine.Begin(now);
        if (before is null || memory is null) return begun;
        var alarms = before.Definitions.Select((d, i) => (d.Id, i)).ToDictionary(d => d.Id, d => memory.Alarms[d.i]);
        return begun with
        {
            Channels = [.. engine.Channels.Select(c => before.IndexOfChannel(c.Id) is { } index ? memory.Channels[index] : ChannelMemory.Nothing)],
            Alarms = [.. engine.Definitions.Select(d => alarms.GetValueOrDefault(d.Id) ?? AlarmMemory.Quiet)],
        };
    }

    StudioMemory Through(AlarmEngine engine, StudioMemory memory, PlanStretch stretch, List<AlarmOccurrence> raised, CancellationToken stop)
    {
        using var connection = store.Open();
        var all = series.All.Where(s => s.Unit != Wire.Quantities.AsRead && engine.IndexOfChannel(s.Channel) is not null).Select(s => (s, engine.IndexOfChannel(s.Channel)!.Value));
        using var samples = new LiveSamples(connection, all, stretch.From.ToMicroseconds(), stretch.To.ToMicroseconds());
        var happenings = new Queue<(Instant At, AlarmEvent Event)>(Happenings(stretch).OrderBy(h => h.At));
        var (channels, step, next) = (engine.Channels.Select(c => c.Id).ToArray(), tick.ToTimeSpan().Ticks / 10, 0L);
        while (samples.TryNext(out var sample))
        {
            if (sample.At >= next)
            {
                stop.ThrowIfCancellationRequested();
                // The clock runs on until nothing at all has come for longer than the service can stand still; then it has been away.
                if (next == 0 && memory.LastTick is null) memory = memory with { StartedAt = Columns.FromMicroseconds(sample.At) };
                var until = next == 0 || sample.At - next > AlarmPace.Real.HeldUp.ToTimeSpan().Ticks / 10 * 2 ? sample.At : next;
                for (var at = until; at <= sample.At; at += step) Turn(Columns.FromMicroseconds(at));
                next = sample.At - sample.At % step + step;
            }
            var moment = Columns.FromMicroseconds(sample.At);
            Do(new AlarmEvent.Sample(channels[sample.Channel], moment, sample.Value, sample.IsPlausible, moment));
        }
        return memory;

        void Turn(Instant at)
        {
            while (happenings.TryPeek(out var due) && due.At <= at) Do(happenings.Dequeue().Event);
            Do(new AlarmEvent.Tick(at));
        }

        void Do(AlarmEvent happened)
        {
            var (after, transitions) = engine.Step(memory, happened);
            memory = after;
            foreach (var transition in transitions) if (transition.Change == AlarmChange.Raised) raised.Add(transition.Occurrence);
        }
    }

    IEnumerable<(Instant At, AlarmEvent Event)> Happenings(PlanStretch stretch)
    {
        foreach (var appliance in stretch.Plan.Appliances)
            foreach (var mode in modes.Of(appliance.Id, stretch.From, stretch.To))
                yield return (mode.From, new AlarmEvent.ModeSet(appliance.Id, new ModeInForce(mode.Mode, mode.From, ""), mode.From));
        foreach (var load in loads.All)
        {
            if (load.Curve.StartsAt >= stretch.To || load.Curve.EndsAt < stretch.From) continue;
            yield return (load.Curve.StartsAt, new AlarmEvent.CurveSet(load.Appliance, load.Curve));
            var closes = loads.ClosesAt(load);
            if (loads.For(load.Appliance, closes + Duration.FromTicks(10)) is null) yield return (closes + Duration.FromTicks(10), new AlarmEvent.CurveSet(load.Appliance, null));
        }
    }
}
