using System.Text.Json;
using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Logbook;

/// <summary>Whether a correction can be worked in: what holds after it must be an entry that could have been logged.</summary>
static class CorrectionSense
{
    /// <returns>Null when it can; else what is wrong and what to do.</returns>
    public static string? Problem(WireLogEntry correction, AppliancePlan appliance, SqliteConnection connection)
    {
        var of = correction.Fields["of"]!.GetValue<string>();
        var story = LogRows.WithCorrections(connection, of);
        if (story.FirstOrDefault(e => e.Id == of) is not { } original) return $"there is no entry '{of}' to correct";
        if (original.Appliance != appliance.Id) return $"'{of}' is an entry of {original.Appliance}; log the correction there";
        var changes = Corrections.Changes(correction.Fields);
        if (changes.Count == 0) return null;
        if (original.Entry == "correction") return $"'{of}' is a correction itself; correct '{original.Fields["of"]}', or strike the correction out by sending no fields";
        if (Corrections.Apply(story).FirstOrDefault(e => e.Id == of) is not { } holds) return $"'{of}' has been struck out; log it again instead";
        var after = Corrections.Merged(holds.Fields, changes);
        after["entry"] = original.Entry;
        var (entry, problem) = LogEntryForm.Check(JsonSerializer.SerializeToElement(after), appliance.Id);
        return problem ?? LogSense.Problem(entry!, appliance)
            ?? MeterSense.Problem(entry!, Corrections.MovedTo(correction.Fields) ?? holds.At, appliance, connection, correcting: of);
    }
}
