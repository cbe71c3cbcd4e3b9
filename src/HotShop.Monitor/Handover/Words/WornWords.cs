using System.Globalization;
using NodaTime;

namespace HotShop.Monitor.Handover.Words;

/// <summary>What is due, and how long parts have been hot.</summary>
static class WornWords
{
    public static IReadOnlyList<HandoverLine> Of(Worn worn, Instant now, MorningTimes times)
    {
        var lines = worn.Items.Select(i => Item(i, times)).ToList();
        lines.AddRange(worn.Couples.Select(c => new HandoverLine(
            $"{c.ApplianceName} {c.Channel.Replace('-', ' ')} thermocouple: {Number(c.HoursHot)} h above 1000 °C (1832 °F).",
            c.UncorrectedSince is { } compared ? $"Since {times.Day(c.Since)}. The log has a calibration of {times.Day(compared)}, but its corrections in hotshop.json are older: write the new ones there."
            : c.IsReset ? $"Since {times.Day(c.Since)}, when it was last calibrated or mended." : $"Since {times.Day(c.Since)}, its first reading here; a calibration or repair in the log that names it begins anew.")));
        lines.AddRange(worn.Pots.Select(p => p.ChangedAt is { } at
            ? new HandoverLine($"Pot of {p.ApplianceName}: {Days((now - at).TotalDays)} old.", $"Changed {times.Day(at)}.")
            : new HandoverLine($"Pot of {p.ApplianceName}: its age is not in the log.", "Log 'pot changed' when it is.")));
        lines.Add(worn.LastCalibrationAt is { } calibrated
            ? new($"Last calibration: {times.Day(calibrated)}, {Days((now - calibrated).TotalDays)} ago.")
            : new("No calibration is known."));
        return lines;
    }

    /// <summary>Names of what is due now, for the line under the headline.</summary>
    public static string? DueInShort(Worn worn)
    {
        var due = worn.Items.Where(i => i.IsDue).Select(i => i.Name).ToList();
        return due.Count switch { 0 => null, 1 => $"due: {due[0]}", _ => $"due: {due[0]} and {MorningTimes.Count(due.Count - 1, "other thing", "other things")}" };
    }

    static HandoverLine Item(DueItem item, MorningTimes times)
    {
        var name = Capital(item.Name) + (item.ApplianceName is { } place ? $", {place}" : "");
        var unit = item.IsInHours ? $"{Number(Math.Abs(item.Left))} h" : Days(Math.Abs(item.Left));
        var text = item.IsDue ? $"{name}: due{(Math.Abs(item.Left) < 1 ? "" : $", {unit} over")}." : $"{name}: in {unit}{(item.IsInHours ? " of running hot" : "")}.";
        var every = item.IsInHours ? $"every {Number(item.Every)} h" : $"every {Days(item.Every)}";
        return new(text, $"{Capital(every)}; {(item.DoneAt is { } at ? $"last done {times.Day(at)}" : "the log does not say when it was last done")}.");
    }

    static string Days(double days) => Math.Round(days) is 1 ? "1 day" : $"{Number(days)} days";

    static string Number(double value) => Math.Round(value).ToString("#,0", CultureInfo.InvariantCulture);

    static string Capital(string text) => char.ToUpperInvariant(text[0]) + text[1..];
}
