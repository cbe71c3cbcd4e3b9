using System.Globalization;
using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Handover;

/// <summary>Somebody has read the handover and looks after the shop from here on.</summary>
sealed record TakenOver(string Who, Instant At);

/// <summary>"I take over", and the answers to what the night left open: both are notes in the log, so that the next can read them.</summary>
sealed class Takeover(StudioPlan plan, LogbookBook logbook, IStoreWriter writer)
{
    const string MorningField = "handover";
    const int LongestName = 60, LongestText = 300;

    /// <summary>The shop where it is an appliance of its own, else the first: a note must lie somewhere.</summary>
    readonly string place = (plan.Appliances.FirstOrDefault(a => a.Kind == ApplianceKind.Shop) ?? plan.Appliances[0]).Id;

    /// <summary>Who took over on a morning, the last of them; null while nobody has.</summary>
    public TakenOver? Of(LocalDate morning)
    {
        var from = plan.Zone.AtStartOfDay(morning).ToInstant();
        return logbook.InForce(["note"], from, from + Duration.FromHours(40)).LastOrDefault(e => e.Fields[MorningField]?.ToString() == Name(morning)) is { } note
            ? new(note.Who ?? "somebody", note.At) : null;
    }

    /// <returns>What is wrong with the name; null when it is done. Twice by the same person is once.</returns>
    public async Task<string?> Take(LocalDate morning, string? who, Instant now, CancellationToken stop)
    {
        if (Problem(who) is { } problem) return problem;
        var name = who!.Trim();
        if (Of(morning) is { } before && string.Equals(before.Who, name, StringComparison.OrdinalIgnoreCase)) return null;
        return await Note(place, name, new() { ["text"] = "I take over", [MorningField] = Name(morning) }, now, stop);
    }

    /// <summary>Writes down why a trouble came about.</summary>
    /// <returns>What is wrong; null when it is kept.</returns>
    public async Task<string?> Explain(string appliance, string occurrence, string? text, string? who, Instant now, CancellationToken stop)
    {
        if (Problem(who) is { } problem) return problem;
        if (string.IsNullOrWhiteSpace(text) || text.Trim().Length > LongestText) return $"the cause must be 1 to {LongestText} characters: write why it happened, or that nobody knows";
        return await Note(plan.Appliance(appliance) is null ? place : appliance, who!.Trim(), new() { ["text"] = text.Trim(), [NightTroubles.CauseField] = occurrence }, now, stop);
    }

    async Task<string?> Note(string appliance, string who, JsonObject fields, Instant now, CancellationToken stop)
    {
        var result = await writer.Write(scope => logbook.Add(new WireLogEntry(appliance, "note", null, who, now, fields), now, scope), stop);
        return result.Refusal;
    }

    static string? Problem(string? who) =>
        string.IsNullOrWhiteSpace(who) || who.Trim().Length > LongestName ? string.Create(CultureInfo.InvariantCulture, $"your name must be 1 to {LongestName} characters") : null;

    static string Name(LocalDate morning) => LocalDatePattern.Iso.Format(morning);
}
