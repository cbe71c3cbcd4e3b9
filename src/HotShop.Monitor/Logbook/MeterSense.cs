using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>Whether a typed reading can be one of its meter, between those that are there: a register never runs backwards.</summary>
static class MeterSense
{
    /// <param name="correcting">Entry whose place it takes, where it is a correction.</param>
    /// <returns>Null when it can; else what is odd, as a question, and what to send.</returns>
    public static string? Problem(WireLogEntry entry, Instant at, AppliancePlan appliance, SqliteConnection connection, string? correcting = null)
    {
        if (entry.Entry != "meter-reading") return null;
        var (meter, problem) = MeterReading.MeterOf(entry.Fields, appliance);
        if (meter is null) return problem;
        var reading = MeterReading.Of(correcting ?? entry.Id ?? "", at, entry.Who, entry.Fields);
        var others = MeterLog.Of(meter, appliance, connection).Where(r => r.Entry != correcting).ToList();
        if (others.LastOrDefault(r => r.At <= at) is { } before && reading.GainSince(before, meter) is null) return Question(reading, before, reading, meter);
        return others.FirstOrDefault(r => r.At > at) is { } after && after.GainSince(reading, meter) is null ? Question(reading, reading, after, meter) : null;
    }

    static string Question(MeterReading typed, MeterReading earlier, MeterReading later, ChannelPlan meter)
    {
        var start = earlier.NewNumber ?? earlier.Number;
        var other = ReferenceEquals(typed, earlier) ? later : earlier;
        var odd = later.Number * later.CanonicalPerUnit < start * earlier.CanonicalPerUnit
            ? $"it says {Text(typed.Number, typed.Unit)}, and {Text(ReferenceEquals(other, earlier) ? start : other.Number, other.Unit)} was read on {Day(other)}: the register would have run backwards"
            : $"from {Text(start, earlier.Unit)} on {Day(earlier)} to {Text(later.Number, later.Unit)} on {Day(later)} is more than the meter can count ({meter.CounterMaximumPerHour:0.##} {meter.Quantity.CanonicalUnit()} an hour)";
        return $"{odd}. Is a digit missing or one too many? If the meter was exchanged, log the old one's last reading with \"exchange\":true and \"newMeterReading\"; "
            + (meter.CounterDigits is null ? "if its register went past its end, set counterDigits; " : "") + $"if the other reading is wrong, correct '{other.Entry}'";
    }

    static string Text(double number, string unit) => string.Create(CultureInfo.InvariantCulture, $"{number:0.###} {unit}");

    static string Day(MeterReading reading) => reading.At.InUtc().Date.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
