using System.Diagnostics;
using HotShop.Evaluation;
using HotShop.Monitor.Commands;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HotShop.Benchmarks;

/// <summary>
/// A store after a year of thirty channels every ten seconds: rows, bytes, and how long questions about it take. The rows are written straight
/// into the tables, hour by hour as the service does it, so that the pages are as full as the service leaves them; raw rows for the last days only.
/// </summary>
static class YearBenchmark
{
    const int Days = 365, Questions = 9;
    static readonly Instant End = Instant.FromUtc(2026, 3, 3, 0, 0);

    public static async Task Run(string folder, int rawDays, TextWriter lines)
    {
        await using var studio = new BenchStudio(folder, new StoreOptions { RawDays = rawDays }, End);
        var filling = Stopwatch.StartNew();
        Fill(studio, rawDays);
        using (var connection = studio.Store.OpenWriter()) YearOfWork.Write(connection, studio.Plan.Appliances[0].Id, End - Duration.FromDays(Days), Days);
        studio.Checkpoint();
        await lines.WriteLineAsync($"a year of {ThirtyChannels.Topics.Count()} channels every {ThirtyChannels.IntervalSeconds} s, raw rows of {rawDays} days; written in {filling.Elapsed.TotalSeconds:0} s");
        foreach (var table in new[] { "reading", "minute", "hour", "log_entry" }) await lines.WriteLineAsync($"{table,-9} {Count(studio.Store, $"SELECT count(*) FROM {table}"),12} rows");
        await lines.WriteLineAsync($"{"file",-9} {studio.Store.Sizes().Database / 1e6,12:0} MB");
        // The books read the series at their start.
        await Ask(studio, lines);
    }

    static async Task Ask(BenchStudio written, TextWriter lines)
    {
        var series = new SeriesBook(written.Store);
        var history = new ReadingHistory(written.Store, series, written.Clock);
        var fuel = new FuelBook(written.Plan, history, PlanHistory.Always(written.Plan));
        var furnace = written.Plan.Appliances[0];
        var crown = furnace.Channel(Quantity.Temperature)!;
        var yearAgo = End - Duration.FromDays(Days);
        await lines.WriteLineAsync($"{"question",-52} {"answers",8} {"median ms",10} {"longest ms",11}");
        await Time("one channel, a year by hour", () => history.Hours(crown, yearAgo, End).Count);
        await Time("one channel, 30 days by minute", () => history.Minutes(crown, End - Duration.FromDays(30), End).Count);
        await Time("one channel, a day of raw readings", () => history.Raw(crown, End - Duration.FromDays(1), End, 100_000).Count);
        await Time("fuel of a furnace, a year by month", () => fuel.Use(furnace, yearAgo, End, FuelStep.Month, End).Count);
        await Time("fuel of a furnace, a year by day", () => fuel.Use(furnace, yearAgo, End, FuelStep.Day, End).Count);
        await Time("fuel of a furnace, a year by hour", () => fuel.Use(furnace, yearAgo, End, FuelStep.Hour, End).Count);
        // Its own services read the log anew.
        await using var beside = ReportCommand.Beside(written.Plan, written.Clock);
        var accounts = beside.GetRequiredService<AccountBook>();
        await Time("the owner's account of a month (days)", () => accounts.Of(new LocalDate(2026, 2, 1), new LocalDate(2026, 2, 28), End).Days.Count);
        await Time("the owner's account of twelve months (days)", () => accounts.Of(new LocalDate(2025, 3, 3), new LocalDate(2026, 3, 2), End).Days.Count);
        var melting = beside.GetRequiredService<MeltingBook>();
        await Time("holding and melting of a furnace, a month (days)", () => melting.Of(furnace, End - Duration.FromDays(30), End, End)!.Line!.Days.Count);
        await Time("a month against the ninety days before (days)", () => melting.Compare(furnace, End - Duration.FromDays(30), End, End)!.Days.Count);

        async Task Time(string question, Func<int> ask)
        {
            var times = new List<double>();
            var answers = 0;
            for (var i = 0; i < Questions; i++)
            {
                var watch = Stopwatch.StartNew();
                answers = ask();
                times.Add(watch.Elapsed.TotalMilliseconds);
            }
            await lines.WriteLineAsync($"{question,-52} {answers,8} {Sorted.Quantile(times, 0.5),10:0.0} {times.Max(),11:0.0}");
        }
    }

    static void Fill(BenchStudio studio, int rawDays)
    {
        using var connection = studio.Store.OpenWriter();
        StudioStore.Run(connection, "PRAGMA synchronous=OFF");
        var channels = studio.Plan.Appliances.SelectMany(a => a.Channels).ToArray();
        using var series = Command(connection, "INSERT INTO series VALUES (@a, @b, @c)", 3);
        using var reading = Command(connection, "INSERT INTO reading VALUES (@a, @b, @c, 0)", 3);
        using var minute = Command(connection, "INSERT INTO minute VALUES (@a, @b, @c, @d, @e, @f)", 6);
        using var hour = Command(connection, "INSERT INTO hour VALUES (@a, @b, @c, 3600, 0, @d, @e, @f, 360, 0)", 6);
        for (var i = 0; i < channels.Length; i++) Put(series, i + 1, channels[i].Id, channels[i].Quantity.CanonicalUnit());
        for (var h = 0; h < Days * 24; h++)
        {
            if (h % 24 == 0) StudioStore.Run(connection, "BEGIN");
            var from = End - Duration.FromHours(Days * 24 - h);
            for (var i = 0; i < channels.Length; i++) Hour(i + 1, channels[i].Name, from, isRaw: h >= (Days - rawDays) * 24);
            if (h % 24 == 23) StudioStore.Run(connection, "COMMIT");
        }

        void Hour(int id, string channel, Instant from, bool isRaw)
        {
            const int perMinute = 60 / ThirtyChannels.IntervalSeconds;
            double sum = 0, low = double.PositiveInfinity, high = double.NegativeInfinity;
            for (var m = 0; m < 60; m++)
            {
                double minuteSum = 0, minuteLow = double.PositiveInfinity, minuteHigh = double.NegativeInfinity;
                for (var s = 0; s < perMinute; s++)
                {
                    var at = from + Duration.FromSeconds(m * 60 + s * ThirtyChannels.IntervalSeconds);
                    var value = ThirtyChannels.Value(channel, at.ToUnixTimeSeconds() / ThirtyChannels.IntervalSeconds);
                    (minuteSum, minuteLow, minuteHigh) = (minuteSum + value, Math.Min(minuteLow, value), Math.Max(minuteHigh, value));
                    if (isRaw) Put(reading, id, at.ToMicroseconds(), value);
                }
                Put(minute, id, (from + Duration.FromMinutes(m)).ToMicroseconds(), minuteSum / perMinute, minuteLow, minuteHigh, perMinute);
                (sum, low, high) = (sum + minuteSum / perMinute, Math.Min(low, minuteLow), Math.Max(high, minuteHigh));
            }
            Put(hour, id, from.ToMicroseconds(), sum / 60, sum / 60, low, high);
        }
    }

    static SqliteCommand Command(SqliteConnection connection, string sql, int parameters)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        for (var i = 0; i < parameters; i++) command.Parameters.Add(new SqliteParameter { ParameterName = $"@{(char)('a' + i)}" });
        return command;
    }

    static void Put(SqliteCommand command, params ReadOnlySpan<object> values)
    {
        for (var i = 0; i < values.Length; i++) command.Parameters[i].Value = values[i];
        command.ExecuteNonQuery();
    }

    static long Count(StudioStore store, string sql)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }
}
