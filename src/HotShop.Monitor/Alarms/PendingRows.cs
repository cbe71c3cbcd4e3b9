using System.Text.Json;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>Conditions under way, as rows: what a restart must not forget.</summary>
static class PendingRows
{
    public static void Write(string alarm, AlarmMemory before, AlarmMemory after, WriteScope scope)
    {
        if (before.Timing == after.Timing && ReferenceEquals(before.Rule, after.Rule) && before.NotBefore == after.NotBefore) return;
        if (after.Timing == Timing.Quiet && after.Rule == RuleMemory.Nothing && after.NotBefore is null)
        {
            scope.Execute("DELETE FROM alarm_pending WHERE alarm = $alarm", ("$alarm", alarm));
            return;
        }
        scope.Execute("""
            INSERT INTO alarm_pending VALUES ($alarm, $wrong, $wrongSamples, $fine, $fineSamples, $notBefore, $rule)
            ON CONFLICT (alarm) DO UPDATE SET wrong_since = $wrong, wrong_samples = $wrongSamples, fine_since = $fine, fine_samples = $fineSamples, not_before = $notBefore, rule = $rule
            """,
            ("$alarm", alarm), ("$wrong", after.Timing.WrongSince?.ToMicroseconds()), ("$wrongSamples", after.Timing.WrongSamples),
            ("$fine", after.Timing.FineSince?.ToMicroseconds()), ("$fineSamples", after.Timing.FineSamples), ("$notBefore", after.NotBefore?.ToMicroseconds()),
            ("$rule", after.Rule == RuleMemory.Nothing ? null : JsonSerializer.Serialize(RuleText.Of(after.Rule))));
    }

    public static IReadOnlyDictionary<string, (Timing Timing, RuleMemory Rule, Instant? NotBefore)> Read(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT alarm, wrong_since, wrong_samples, fine_since, fine_samples, not_before, rule FROM alarm_pending";
        using var rows = command.ExecuteReader();
        var all = new Dictionary<string, (Timing, RuleMemory, Instant?)>(StringComparer.Ordinal);
        while (rows.Read())
        {
            var rule = rows.GetTextOrNull(6) is { } text ? JsonSerializer.Deserialize<RuleText>(text)!.Memory() : RuleMemory.Nothing;
            all[rows.GetString(0)] = (new Timing(rows.GetInstantOrNull(1), rows.GetInt32(2), rows.GetInstantOrNull(3), rows.GetInt32(4)), rule, rows.GetInstantOrNull(5));
        }
        return all;
    }

    /// <summary>A rule's memory as text; times in microseconds.</summary>
    sealed record RuleText(bool HasReached, double? SetpointMark, IReadOnlyList<PointText>? Trend, double? UsualCubicMetresPerHour)
    {
        public static RuleText Of(RuleMemory memory) => new(memory.HasReached, memory.SetpointMark,
            memory.Trend?.Select(p => new PointText(p.At.ToMicroseconds(), p.Celsius, p.CubicMetresPerHour)).ToList(), memory.UsualCubicMetresPerHour);

        public RuleMemory Memory() => new(HasReached, SetpointMark,
            Trend is null ? null : [.. Trend.Select(p => new TrendPoint(Columns.FromMicroseconds(p.At), p.Celsius, p.CubicMetresPerHour))], UsualCubicMetresPerHour);
    }

    sealed record PointText(long At, double Celsius, double? CubicMetresPerHour);
}
