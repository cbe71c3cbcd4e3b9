using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using HotShop.Monitor.Wire;
using NodaTime.Extensions;

namespace HotShop.Monitor.Logbook;

static class LogbookEndpoints
{
    public static void MapLogbook(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/logbook", (string? appliance, string? from, string? to, bool? corrected, StudioPlan plan, LogbookBook logbook, TimeProvider clock) =>
        {
            var (start, end) = Ask.Span(from, to, clock.GetUtcNow().ToInstant() + NodaTime.Duration.FromMinutes(2));
            var entries = logbook.Entries(appliance is null ? null : Ask.Appliance(plan, appliance).Id, start, end);
            return corrected == true ? Holding(entries, plan.Site) : entries.Select(e => Answer(e, plan.Site));
        }).WithName("logbook").WithSummary("Entries of the logbook in the order of their time, corrections among them; with corrected=true what holds after them, each with its corrections");

        app.MapPost("/api/logbook", async (JsonElement body, StudioPlan plan, LogbookBook logbook, TimeProvider clock, CancellationToken stop) =>
        {
            if (body.ValueKind != JsonValueKind.Object || !body.TryGetProperty("appliance", out var named) || named.ValueKind != JsonValueKind.String)
                throw new BadHttpRequestException("'appliance' is missing: send an object with appliance, entry and the entry's fields");
            var appliance = Ask.Appliance(plan, named.GetString());
            var (entry, problem) = LogEntryForm.Check(body, appliance.Id);
            if (entry is null) throw new BadHttpRequestException(problem!);
            entry.Fields.Remove("appliance");
            var result = await logbook.Add(entry, clock.GetUtcNow().ToInstant(), stop);
            if (result.Entry is not { } kept) throw new BadHttpRequestException(result.Refusal!);
            return TypedResults.Json(Answer(kept, plan.Site), statusCode: result.IsNew ? StatusCodes.Status201Created : StatusCodes.Status200OK);
        }).WithName("log").WithSummary("Adds an entry; the same id is the same entry");
    }

    /// <summary>What holds, and who corrected it; struck-out entries are gone.</summary>
    static IEnumerable<Dictionary<string, object?>> Holding(IReadOnlyList<LogEntry> entries, string site)
    {
        var corrections = entries.Where(e => e.Entry == "correction").ToLookup(e => e.Fields["of"]!.GetValue<string>());
        return Corrections.Apply(entries).Select(e =>
        {
            var answer = Answer(e, site);
            answer["corrections"] = corrections[e.Id].Select(c => Answer(c, site)).ToList();
            return answer;
        });
    }

    /// <summary>An entry as callers see it: its fields beside what every entry has.</summary>
    internal static Dictionary<string, object?> Answer(LogEntry entry, string site)
    {
        var answer = new Dictionary<string, object?>
        {
            ["id"] = entry.Id, ["appliance"] = $"{site}/{entry.Appliance}", ["entry"] = entry.Entry, ["time"] = entry.At, ["who"] = entry.Who,
        };
        foreach (var (key, value) in entry.Fields) answer.TryAdd(key, value);
        return answer;
    }
}
