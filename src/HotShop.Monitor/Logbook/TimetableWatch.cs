using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Logs the changes of mode that the timetable asks for, each once: its id is its appliance and time.</summary>
sealed class TimetableWatch : ITickStage
{
    readonly List<(string Appliance, Timetable Timetable)> timetables;
    /// <summary>A timetable repeats every week: a change further back has been followed by another, or by itself.</summary>
    static readonly Duration LookBack = Duration.FromDays(8);

    readonly LogbookBook logbook;
    readonly IModes modes;
    Instant? doneTo;

    public TimetableWatch(StudioPlan plan, LogbookBook logbook, IModes modes)
    {
        (this.logbook, this.modes) = (logbook, modes);
        timetables = [.. plan.Appliances.Where(a => a.Options.Timetable.Count > 0).Select(a => (a.Id, new Timetable(a.Options.Timetable, plan.Zone)))];
    }

    public void Tick(WriteScope scope)
    {
        foreach (var (appliance, timetable) in timetables)
            foreach (var (at, mode) in doneTo is { } from ? timetable.Due(from, scope.Now) : MissedOnes(appliance, timetable, scope.Now))
                logbook.Add(new WireLogEntry(appliance, "mode", $"timetable-{appliance}-{at.ToUnixTimeSeconds()}", "timetable", at, new JsonObject { ["mode"] = mode.NameOf() }), scope.Now, scope);
        var before = doneTo;
        doneTo = scope.Now;
        scope.OnRollback(() => doneTo = before);
    }

    /// <summary>After a downtime the changes since the last known mode are made up for; a studio that never had one begins with the last that was due.</summary>
    IEnumerable<(Instant At, Mode Mode)> MissedOnes(string appliance, Timetable timetable, Instant now)
    {
        var due = timetable.Due(now - LookBack, now);
        var since = modes.Of(appliance).Since;
        return since == Instant.MinValue ? due.TakeLast(1) : due.Where(d => d.At > since);
    }
}
