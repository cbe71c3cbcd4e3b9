using System.Globalization;
using System.Text.Json;

namespace HotShop.Evaluation;

/// <summary>A scorecard for people and for programs.</summary>
static class ScorePrint
{
    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    public static async Task Table(Scorecard score, Request request, TextWriter lines)
    {
        var width = score.Measures.Max(m => m.Name.Length);
        await lines.WriteLineAsync();
        foreach (var measure in score.Measures)
            await lines.WriteLineAsync(string.Create(CultureInfo.InvariantCulture,
                $"{measure.Name.PadRight(width)}  {Measure.Text(measure.Value),10} {(measure.Unit == "1" ? "" : measure.Unit),-4} {measure.Target ?? "",-9} {Word(measure.Pass)}"));
        var seeds = request.Count == 1 ? $"seed {request.Seed}" : $"seeds {request.Seed} to {request.Seed + request.Count - 1}";
        await lines.WriteLineAsync($"{score.Name}, {seeds}, {request.Days} {(request.Days == 1 ? "day" : "days each")}: {(score.Pass ? "passed" : "FAILED")}");
    }

    public static string Json(Scorecard score) =>
        JsonSerializer.Serialize(new { scorecard = score.Name, seed = score.Seed, pass = score.Pass, measures = score.Measures }, Format);

    static string Word(bool? pass) => pass switch { true => "reached", false => "MISSED", null => "" };
}
