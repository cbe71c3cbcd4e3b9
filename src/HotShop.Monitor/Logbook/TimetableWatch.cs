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
    readonly LogbookBook logbook;
    Instant? doneTo;

    public TimetableWatch(StudioPlan plan, LogbookBook logbook)
    {
        this.logbook = logbook;
        timetables = [.. plan.Appliances.Where(a => a.Options.Timetable.Count > 0).Select(a => (a.Id, new Timetable(a.Options.Timetable, plan.Zone)))];
    }

    public void Tick(WriteScope scope)
    {
        // After a downtime the changes of the last day are made up for; what was logged before is known by its id.
        var from = doneTo ?? scope.Now - Duration.FromDays(1);
        foreach (var (appliance, timetable) in timetables)
            foreach (var (at, mode) in timetable.Due(from, scope.Now))
                logbook.Add(new WireLogEntry(appliance, "mode", $"timetable-{appliance}-{at.ToUnixTimeSeconds()}", "timetable", at, new JsonObject { ["mode"] = mode.NameOf() }), scope.Now, scope);
        var before = doneTo;
        doneTo = scope.Now;
        scope.OnRollback(() => doneTo = before);
    }
}
