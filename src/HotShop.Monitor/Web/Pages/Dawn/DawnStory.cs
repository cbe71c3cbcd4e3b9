using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Handover.Words;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Web.Pages.Dawn;

/// <summary>Something that happened in the night, or is expected of the morning, at its moment.</summary>
/// <param name="Appliance">Whose lane it belongs to; null for the shop.</param>
/// <param name="Priority">Of a trouble; null for anything else.</param>
internal sealed record DawnStory(Instant At, string? Appliance, string Text, string? More = null, int? Priority = null, bool IsExpected = false)
{
    /// <summary>A gap shorter than this is in the words, not among the stories.</summary>
    static readonly Duration worthAStory = Duration.FromMinutes(10);

    /// <summary>Charges closer together than this are one evening's charging.</summary>
    static readonly Duration oneCharging = Duration.FromMinutes(90);

    /// <summary>The night in order.</summary>
    public static IReadOnlyList<DawnStory> Of(Handover.Morning m, StudioPlan plan, MorningTimes times)
    {
        var stories = new List<DawnStory>();
        string Name(string appliance) => plan.Appliance(appliance)?.Name ?? appliance;
        if (m.Night.IsEndOfWorkLogged) stories.Add(new(m.Night.From, null, "end of work"));
        stories.AddRange(m.Urgent.Select(t => Trouble(t, Name(t.Occurrence.Appliance), times)));
        stories.AddRange(m.Late.Where(n => n.Alarm is not null).Select(n => new DawnStory(n.Stretch.From, n.Alarm!.Appliance, $"{n.ApplianceName}: {Wording.NameOf(n.Alarm.Kind)}", $"found later, at {times.At(n.Stretch.ArrivedAt)}", n.Alarm.Priority)));
        foreach (var a in m.Appliances)
            stories.AddRange(a.Gaps.Where(g => g.To - g.From >= worthAStory).Select(g => new DawnStory(g.From, a.Appliance, $"{a.Name}: no reading", $"for {MorningTimes.Span(g.To - g.From)}")));
        stories.AddRange(Charges(m.Log, Name));
        stories.AddRange(m.Log.Select(e => Entry(e, Name)).OfType<DawnStory>());
        stories.AddRange(m.Pots.Where(p => p.Report.ReadyAt is { } at && at >= m.Night.From && at <= m.Night.To + Duration.FromHours(12))
            .Select(p => new DawnStory(p.Report.ReadyAt!.Value, p.Appliance, m.Pots.Count > 1 ? $"glass of {p.Name} ready" : "glass ready", IsExpected: p.Report.ReadyAt > m.Night.To)));
        stories.AddRange(m.Openings.Select(o => Opening(o, m.Night)).OfType<DawnStory>());
        if (m.TakenOver is { } taken && taken.At <= m.Night.To) stories.Add(new(taken.At, null, $"{taken.Who} took over"));
        return [.. stories.OrderBy(s => s.At)];
    }

    static DawnStory Trouble(NightTrouble trouble, string name, MorningTimes times)
    {
        var o = trouble.Occurrence;
        var more = (o.AcknowledgedAt is { } at ? $"{o.AcknowledgedBy} had it after {MorningTimes.Span(at - o.Since)}" : "nobody took it") + (o.ClearedAt is { } end ? $"; ended {times.At(end)}" : "; still open");
        return new(o.Since, o.Appliance, $"{name}: {Wording.NameOf(o.Kind)}", more, o.Priority);
    }

    static IEnumerable<DawnStory> Charges(IReadOnlyList<LogEntry> log, Func<string, string> name)
    {
        foreach (var furnace in log.Where(e => e.Entry == "charge").GroupBy(e => e.Appliance))
        {
            var open = new List<LogEntry>();
            foreach (var charge in furnace)
            {
                if (open.Count > 0 && charge.At - open[^1].At > oneCharging)
                {
                    yield return Charging(open, name(furnace.Key));
                    open = [];
                }
                open.Add(charge);
            }
            if (open.Count > 0) yield return Charging(open, name(furnace.Key));
        }
    }

    static DawnStory Charging(List<LogEntry> charges, string name) =>
        new(charges[0].At, charges[0].Appliance, charges.Count == 1 ? "charged" : $"charged {charges.Count} times", $"{name}{(charges[0].Who is { } who ? $", {who}" : "")}");

    static DawnStory? Entry(LogEntry entry, Func<string, string> name) => entry.Entry switch
    {
        "mode" when entry.Fields["mode"]?.ToString() is { } mode && entry.Appliance.StartsWith("annealer", StringComparison.Ordinal) is false => new(entry.At, entry.Appliance, $"{name(entry.Appliance)}: {mode.Replace('-', ' ')}", entry.Who),
        "note" when entry.Fields["handover"] is null && entry.Fields[NightTroubles.CauseField] is null && entry.Fields["text"]?.ToString() is { } text => new(entry.At, entry.Appliance, $"note: {Shown.Short(text)}", entry.Who),
        "repair" or "calibration" or "pot-changed" => new(entry.At, entry.Appliance, $"{name(entry.Appliance)}: {entry.Entry.Replace('-', ' ')}", entry.Who),
        _ => null,
    };

    static DawnStory? Opening(Opening o, Handover.Night night) => o switch
    {
        { Phase: CoolingPhase.Down, DownSince: { } since } when since >= night.From => new(since, o.Appliance, $"{o.Name}: below {o.TargetCelsius:0} °C"),
        { Expected: { } e } when e.At <= night.To + Duration.FromHours(12) => new(e.At, o.Appliance, $"{o.Name}: {o.TargetCelsius:0} °C", IsExpected: true),
        _ => null,
    };
}
