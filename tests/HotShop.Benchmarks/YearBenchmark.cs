using System.Diagnostics;
using HotShop.Evaluation;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Benchmarks;

/// <summary>A store after a year of thirty channels every ten seconds: rows, bytes, and how long questions about it take.</summary>
static class YearBenchmark
{
    const int Days = YearOfReadings.Days, Questions = 9;
    static readonly Instant End = YearOfReadings.End;

    public static async Task Run(string folder, int rawDays, TextWriter lines)
    {
        var filling = Stopwatch.StartNew();
        await using (var writing = new BenchStudio(folder, new StoreOptions { RawDays = rawDays }, End))
        {
            YearOfReadings.Write(writing, rawDays);
            using (var connection = writing.Store.OpenWriter()) YearOfWork.Write(connection, writing.Plan.Appliances[0].Id, End - Duration.FromDays(Days), Days);
            writing.Checkpoint();
        }
        // A service that starts with this store: its books read series and log at their start.
        await using var studio = new BenchStudio(folder, new StoreOptions { RawDays = rawDays }, End);
        await lines.WriteLineAsync($"a year of {ThirtyChannels.Topics.Count()} channels every {ThirtyChannels.IntervalSeconds} s, raw rows of {rawDays} days; written in {filling.Elapsed.TotalSeconds:0} s");
        foreach (var table in new[] { "reading", "minute", "hour", "log_entry" }) await lines.WriteLineAsync($"{table,-9} {Count(studio.Store, $"SELECT count(*) FROM {table}"),12} rows");
        await lines.WriteLineAsync($"{"file",-9} {studio.Store.Sizes().Database / 1e6,12:0} MB");
        await Ask(studio, lines);
    }

    static async Task Ask(BenchStudio studio, TextWriter lines)
    {
        var (history, fuel, accounts, melting) = (studio.The<IReadingHistory>(), studio.The<FuelBook>(), studio.The<AccountBook>(), studio.The<MeltingBook>());
        var furnace = studio.Plan.Appliances[0];
        var crown = furnace.Channel(Quantity.Temperature)!;
        var yearAgo = End - Duration.FromDays(Days);
        await lines.WriteLineAsync($"{"question",-52} {"answers",8} {"median ms",10} {"longest ms",11} {"processor ms",13}");
        await Time("one channel, a year by hour", () => history.Hours(crown, yearAgo, End).Count);
        await Time("one channel, 30 days by minute", () => history.Minutes(crown, End - Duration.FromDays(30), End).Count);
        await Time("one channel, a day of raw readings", () => history.Raw(crown, End - Duration.FromDays(1), End, 100_000).Count);
        await Time("fuel of a furnace, a year by month", () => fuel.Use(furnace, yearAgo, End, FuelStep.Month, End).Count);
        await Time("fuel of a furnace, a year by day", () => fuel.Use(furnace, yearAgo, End, FuelStep.Day, End).Count);
        await Time("fuel of a furnace, a year by hour", () => fuel.Use(furnace, yearAgo, End, FuelStep.Hour, End).Count);
        await Time("the owner's account of a month (days)", () => accounts.Of(new LocalDate(2026, 2, 1), new LocalDate(2026, 2, 28), End).Days.Count);
        await Time("the owner's account of twelve months (days)", () => accounts.Of(new LocalDate(2025, 3, 3), new LocalDate(2026, 3, 2), End).Days.Count);
        await Time("holding and melting of a furnace, a month (days)", () => melting.Of(furnace, End - Duration.FromDays(30), End, End)!.Line!.Days.Count);
        await Time("a month against the ninety days before (days)", () => melting.Compare(furnace, End - Duration.FromDays(30), End, End)!.Days.Count);

        async Task Time(string question, Func<int> ask)
        {
            var (times, processor) = (new List<double>(), new List<double>());
            var answers = 0;
            for (var i = 0; i < Questions; i++)
            {
                var (used, watch) = (Environment.CpuUsage.TotalTime, Stopwatch.StartNew());
                answers = ask();
                times.Add(watch.Elapsed.TotalMilliseconds);
                processor.Add((Environment.CpuUsage.TotalTime - used).TotalMilliseconds);
            }
            await lines.WriteLineAsync($"{question,-52} {answers,8} {Sorted.Quantile(times, 0.5),10:0.0} {times.Max(),11:0.0} {Sorted.Quantile(processor, 0.5),13:0.0}");
        }
    }

    static long Count(StudioStore store, string sql)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = sql;
        return (long)command.ExecuteScalar()!;
    }
}
