using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Benchmarks;

/// <summary>
/// Bytes written per reading at thirty channels every ten seconds, with everything that belongs to it: arrivals, minute close, hourly move,
/// checkpoints, alarms. The hours are simulated; the writes are real.
/// </summary>
static class BytesBenchmark
{
    /// <param name="Together">Readings that come at the same moment.</param>
    sealed record Arrival(string Name, int Together, StoreOptions Store);

    static readonly Arrival[] Arrivals =
    [
        new("all thirty together", 30, new()),
        new("five devices of six", 6, new()),
        new("one by one, evenly spread", 1, new()),
        // The profile gathers in real seconds; here it gets at once what five seconds would bring, and waits a fiftieth of a second for it.
        new("one by one, memory-card profile (5 s)", 15, new() { Profile = "memory-card", CardLingerSeconds = 0.02 }),
    ];

    public static async Task Run(string folder, int hours, TextWriter lines)
    {
        await lines.WriteLineAsync($"{"arrival",-40} {"readings",9} {"bytes handed over",18} {"bytes in pages",15}  (each per reading)");
        foreach (var arrival in Arrivals)
        {
            var own = Directory.CreateDirectory(Path.Combine(folder, arrival.Name.Replace(' ', '-'))).FullName;
            var (readings, written) = await Measure(own, arrival, hours);
            await lines.WriteLineAsync($"{arrival.Name,-40} {readings,9} {(double)written.Handed / readings,18:0} {(double)written.Pages / readings,15:0}");
        }
    }

    static async Task<(int Readings, WrittenBytes Written)> Measure(string folder, Arrival arrival, int hours)
    {
        var start = Instant.FromUtc(2026, 3, 3, 7, 0);
        await using var studio = new BenchStudio(folder, arrival.Store, start);
        var topics = ThirtyChannels.Topics.ToArray();
        var groups = topics.Length / arrival.Together;
        // Begins after the tables have their first pages and the statements are prepared.
        await Minutes(studio, topics, arrival, groups, start, 2);
        studio.Checkpoint();
        var before = WrittenBytes.Now();
        var readings = await Minutes(studio, topics, arrival, groups, start + Duration.FromMinutes(2), hours * 60);
        studio.Checkpoint();
        return (readings, WrittenBytes.Now() - before);
    }

    static async Task<int> Minutes(BenchStudio studio, (string Topic, string Appliance, string Channel)[] topics, Arrival arrival, int groups, Instant from, int minutes)
    {
        var readings = 0;
        var step = Duration.FromSeconds(ThirtyChannels.IntervalSeconds) / groups;
        var nextTick = from;
        for (var sample = 0; sample < minutes * 60 / ThirtyChannels.IntervalSeconds; sample++)
            for (var group = 0; group < groups; group++)
            {
                var at = from + Duration.FromSeconds(sample * ThirtyChannels.IntervalSeconds) + step * group;
                studio.Clock.Now = at;
                await Task.WhenAll(topics.Skip(group * arrival.Together).Take(arrival.Together)
                    .Select(t => studio.Take(t.Topic, ThirtyChannels.Value(t.Channel, sample), at)));
                readings += arrival.Together;
                for (; nextTick <= at + step; nextTick += Duration.FromSeconds(1))
                {
                    studio.Clock.Now = Instant.Max(nextTick, at);
                    await studio.Tick();
                    if (nextTick.ToUnixTimeSeconds() % 60 == 0) await studio.Move();
                }
            }
        return readings;
    }
}
