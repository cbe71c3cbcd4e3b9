using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>A load as it is posted.</summary>
sealed record LoadRequest(string? Id, string? Appliance, string? Name, string? StartAt, double? StartCelsius, IReadOnlyList<StageText?>? Stages);

/// <summary>Checks a typed load; says where, what and what to do.</summary>
static class LoadForm
{
    const int MostStages = 50, LongestName = 120;
    static readonly Duration LongestLoad = Duration.FromDays(60), FurthestAhead = Duration.FromDays(60);

    public static (AnnealerLoad? Load, string? Problem) Check(LoadRequest request, AppliancePlan appliance, Instant now, Func<string> newId)
    {
        if (appliance.Kind is not (ApplianceKind.Annealer or ApplianceKind.PickUpOven)) return (null, $"'{appliance.Id}' is no annealer: name one that is");
        if (request.Id is { } id && (id.Length is 0 or > 64 || !id.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_'))) return (null, "'id' must be 1 to 64 letters, digits, '-' or '_'; leave it out to get one");
        if (request.Name?.Length > LongestName) return (null, $"'name' is longer than {LongestName} characters");
        if (StrictTime.Parse(request.StartAt ?? "") is not { } startAt) return (null, "'startAt' must be a time like 2026-03-01T18:30:00Z");
        if (startAt < now - LongestLoad || startAt > now + FurthestAhead) return (null, $"'startAt' is {request.StartAt}: write a time within 60 days of now");
        if (!InRange(request.StartCelsius, 0, 800)) return (null, "'startCelsius' must be a number from 0 to 800");
        if (request.Stages is not { Count: > 0 and <= MostStages } stages) return (null, $"'stages' must be 1 to {MostStages} stages: {{\"toCelsius\":449,\"kelvinPerHour\":20}} or {{\"holdMinutes\":60}}");
        for (var i = 0; i < stages.Count; i++)
            if (Problem(stages[i]) is { } problem) return (null, $"stages[{i}]: {problem}");

        var curve = new AnnealingCurve(startAt, request.StartCelsius!.Value, [.. stages.Select(s => s!.Stage())]);
        return curve.EndsAt - startAt > LongestLoad
            ? (null, string.Create(CultureInfo.InvariantCulture, $"the curve takes {(curve.EndsAt - startAt).TotalDays:0} days: at most 60 are kept; is a rate wrong?"))
            : (new AnnealerLoad(request.Id ?? newId(), appliance.Id, request.Name ?? "", curve, [.. stages.Select(s => s!)]), null);
    }

    static string? Problem(StageText? stage) => stage switch
    {
        null or { HoldMinutes: null, ToCelsius: null, KelvinPerHour: null } => "is empty: send toCelsius and kelvinPerHour, or holdMinutes",
        { HoldMinutes: not null } when stage.ToCelsius is not null || stage.KelvinPerHour is not null => "is a ramp and a hold at once: make two stages of it",
        { HoldMinutes: { } minutes } => InRange(minutes, 0, 40_320) ? null : "'holdMinutes' must be from 0 to 40320 (four weeks)",
        _ when !InRange(stage.ToCelsius, 0, 800) => "'toCelsius' must be a number from 0 to 800",
        _ when !InRange(stage.KelvinPerHour, 0.05, 2000) => "'kelvinPerHour' must be a number from 0.05 to 2000",
        _ => null,
    };

    static bool InRange(double? value, double low, double high) => value is { } number && number >= low && number <= high;
}
