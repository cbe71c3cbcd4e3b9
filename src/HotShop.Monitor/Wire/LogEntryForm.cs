using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>The form of log entries, however they arrive: which fields an entry needs, and that numbers are numbers. No knowledge of pots or people.</summary>
static class LogEntryForm
{
    const int LongestText = 2000, LongestName = 100, LongestSessionDays = 31;

    public static readonly IReadOnlyList<string> Kinds =
        ["gather", "tally", "charge", "dip", "ladle-out", "returned-glass", "mode", "meter-reading", "pot-changed", "calibration", "repair", "note", "session", "correction"];

    /// <returns>The entry, or what is wrong with it and what to send; never both.</returns>
    public static (WireLogEntry? Entry, string? Problem) Check(JsonElement root, string appliance)
    {
        if (root.ValueKind != JsonValueKind.Object) return (null, "it is no object: send one object per entry");
        var fields = JsonObject.Create(root)!;
        try
        {
            if (Text(fields, "entry", LongestName) is not { } entry) return (null, $"'entry' is missing: write one of {string.Join(", ", Kinds)}");
            if (!Kinds.Contains(entry)) return (null, $"'{Shown.Short(entry)}' is no entry: write one of {string.Join(", ", Kinds)}");
            var id = Text(fields, "id", LongestName);
            var who = Text(fields, "who", LongestName);
            JsonElement? time = root.TryGetProperty("time", out var given) ? given : null;
            if (!OwnRows.TryTime(time, out var at, out var timeProblem)) return (null, timeProblem);
            Require(entry, fields);
            foreach (var key in new[] { "entry", "id", "who", "time" }) fields.Remove(key);
            return (new WireLogEntry(appliance, entry, id, who, at, fields), null);
        }
        catch (FormProblem problem)
        {
            return (null, problem.Message);
        }
    }

    static void Require(string entry, JsonObject fields)
    {
        switch (entry)
        {
            case "gather":
                if (Text(fields, "size", LongestName) is null && !fields.ContainsKey("massKg"))
                    throw new FormProblem("a gather needs its size, or its massKg: add \"size\":\"medium\" or \"massKg\":0.4");
                if (fields.ContainsKey("massKg")) Positive(fields, "massKg");
                if (fields.ContainsKey("count")) Count(fields["count"], "count");
                break;
            case "tally": Tally(fields); break;
            case "charge":
                _ = Text(fields, "material", LongestName) ?? throw new FormProblem("a charge needs its material: add \"material\":\"cullet\" or \"batch\"");
                Amount(fields);
                Yield(fields);
                break;
            case "dip":
                if (fields.ContainsKey("glassDepth") == fields.ContainsKey("rimToGlass"))
                    throw new FormProblem("a dip needs either glassDepth or rimToGlass: send one of the two, with its unit");
                Measured(fields, fields.ContainsKey("glassDepth") ? "glassDepth" : "rimToGlass", Dimension.Length, mayBeZero: true);
                break;
            case "ladle-out" or "returned-glass":
                Amount(fields);
                break;
            case "mode":
                _ = Text(fields, "mode", LongestName) ?? throw new FormProblem("the mode is missing: add \"mode\":\"holding\" or another");
                break;
            case "meter-reading":
                Measured(fields, "reading", Dimension.Volume, mayBeZero: true, orElse: Dimension.Energy);
                _ = Text(fields, "channel", LongestName);
                Exchange(fields);
                break;
            case "note":
                _ = Text(fields, "text", LongestText) ?? throw new FormProblem("the note is empty: add \"text\"");
                break;
            case "session":
                _ = Text(fields, "who", LongestName) ?? throw new FormProblem("a session needs a name to put its cost to: add \"who\"");
                if (Time(fields, "from") is not { } begin || Time(fields, "to") is not { } end)
                    throw new FormProblem("a session needs its times: add \"from\" and \"to\" like \"2026-03-01T18:00:00Z\"");
                if (end <= begin) throw new FormProblem("the session ends before it begins: put 'from' before 'to'");
                if (end - begin > Duration.FromDays(LongestSessionDays)) throw new FormProblem($"the session is longer than {LongestSessionDays} days: log each on its own");
                break;
            case "correction":
                _ = Text(fields, "of", LongestName) ?? throw new FormProblem("a correction needs the id of the entry it corrects: add \"of\"");
                _ = Time(fields, "at");
                _ = Text(fields, "by", LongestName);
                break;
        }
        OnlyFinite(fields);
    }

    static void Tally(JsonObject fields)
    {
        if (fields["gathers"] is not JsonObject { Count: > 0 } gathers)
            throw new FormProblem("a tally needs its gathers by size: add \"gathers\":{\"small\":12,\"medium\":5}");
        // None at all is a tally too: nobody worked that day.
        foreach (var (size, count) in gathers) Count(count, $"gathers.{Shown.Short(size)}", least: 0);
        Instant? from = Time(fields, "from"), to = Time(fields, "to");
        if (from >= to) throw new FormProblem("the tally ends before it begins: put 'from' before 'to'");
    }

    static void Exchange(JsonObject fields)
    {
        if (fields["exchange"] is { } exchange && exchange.GetValueKind() is not (JsonValueKind.True or JsonValueKind.False))
            throw new FormProblem($"'exchange' is {Shown.Short(exchange.ToJsonString())}: write true where the meter was exchanged for another");
        if (!fields.ContainsKey("newMeterReading")) return;
        if (fields["exchange"]?.GetValueKind() != JsonValueKind.True) throw new FormProblem("'newMeterReading' is the first reading of a new meter: add \"exchange\":true");
        if (Number(fields, "newMeterReading") < 0) throw new FormProblem($"'newMeterReading' is {Number(fields, "newMeterReading")}: it must be 0 or more");
    }

    static Instant? Time(JsonObject fields, string key)
    {
        if (fields[key] is not { } node) return null;
        return node.GetValueKind() == JsonValueKind.String && StrictTime.Parse(node.GetValue<string>()) is { } at
            ? at
            : throw new FormProblem($"'{key}' is no time with offset: write it like \"2026-03-01T02:13:05Z\"");
    }

    static string? Text(JsonObject fields, string key, int longest)
    {
        if (fields[key] is not { } node) return null;
        if (node.GetValueKind() != JsonValueKind.String) throw new FormProblem($"'{key}' is {Shown.Short(node.ToJsonString())}: write it in quotes");
        var text = node.GetValue<string>();
        if (text.Length > longest) throw new FormProblem($"'{key}' has {text.Length} characters: send at most {longest}");
        return string.IsNullOrWhiteSpace(text) ? null : text;
    }

    static double Number(JsonObject fields, string key)
    {
        if (fields[key] is not { } node) throw new FormProblem($"'{key}' is missing");
        if (node.GetValueKind() != JsonValueKind.Number || !double.IsFinite(node.GetValue<double>()))
            throw new FormProblem($"'{key}' is {Shown.Short(node.ToJsonString())}: write a number without quotes, such as 12.5");
        return node.GetValue<double>();
    }

    static void Positive(JsonObject fields, string key)
    {
        if (Number(fields, key) is var number && number <= 0) throw new FormProblem($"'{key}' is {number}: it must be above 0");
    }

    static void Amount(JsonObject fields)
    {
        if (fields.ContainsKey("massKg")) Positive(fields, "massKg");
        else Measured(fields, "mass", Dimension.Mass);
    }

    static void Yield(JsonObject fields)
    {
        if (fields.ContainsKey("yield") && Number(fields, "yield") is not (> 0 and <= 1))
            throw new FormProblem($"'yield' is {Number(fields, "yield")}: write the share that stays as glass, such as 0.85 for 85 %");
    }

    static void Count(JsonNode? node, string key, int least = 1)
    {
        var isCount = node?.GetValueKind() == JsonValueKind.Number && node.GetValue<double>() is <= 1000 and var number && number >= least && number == Math.Floor(number);
        if (!isCount) throw new FormProblem($"'{key}' is {Shown.Short(node?.ToJsonString() ?? "null")}: write a whole number from {least} to 1000");
    }

    static void Measured(JsonObject fields, string key, Dimension dimension, bool mayBeZero = false, Dimension? orElse = null)
    {
        if (mayBeZero ? Number(fields, key) < 0 : Number(fields, key) <= 0)
            throw new FormProblem($"'{key}' is {Number(fields, key)}: it must be {(mayBeZero ? "0 or more" : "above 0")}");
        if (Text(fields, "unit", LongestName) is not { } unit)
            throw new FormProblem($"'{key}' has no unit, and a guess would be a wrong amount: add \"unit\":\"{Ucum.Offer(dimension).Split(',')[0]}\"");
        if (Ucum.InCanonical(1, unit, dimension) is null && (orElse is null || Ucum.InCanonical(1, unit, orElse.Value) is null))
            throw new FormProblem($"'{Shown.Short(unit)}' is no unit for '{key}': write {Ucum.Offer(dimension)}{(orElse is { } other ? ", " + Ucum.Offer(other) : "")}");
    }

    static void OnlyFinite(JsonNode? node)
    {
        switch (node)
        {
            case JsonObject inner:
                foreach (var (_, value) in inner) OnlyFinite(value);
                break;
            case JsonArray list:
                foreach (var value in list) OnlyFinite(value);
                break;
            case JsonValue value when value.GetValueKind() == JsonValueKind.Number && !double.IsFinite(value.GetValue<double>()):
                throw new FormProblem($"'{Shown.Short(value.ToJsonString())}' is too large for a number");
        }
    }

    /// <summary>Ends the check at the first problem; never leaves this file.</summary>
    sealed class FormProblem(string message) : Exception(message);
}
