using System.Diagnostics;
using HotShop.Evaluation;
using MQTTnet.Exceptions;

namespace HotShop.Benchmarks.Live;

/// <summary>
/// From the publish of the reading that makes an alarm true to the arrival of the call at a push receiver, while 200 readings a second,
/// a rollup of late hours, a backup and a slow mail server burden the service. The alarm has no delay of its own.
/// </summary>
static class LatencyBenchmark
{
    const int WarmUps = 5;
    static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(150), Lost = TimeSpan.FromSeconds(30);

    public static async Task Run(string folder, int seconds, int slowDiskMilliseconds, bool isBurdened, TimeProvider clock, TextWriter lines)
    {
        var environment = slowDiskMilliseconds > 0 ? await SlowDisk.Environment(folder, slowDiskMilliseconds) : new Dictionary<string, string>();
        await using var push = await PushReceiver.Start();
        using var mail = new SlowMail(clock);
        await using var studio = await LiveStudio.Start(folder, push.Url, mail.Port, environment, clock);
        using var stop = new CancellationTokenSource();
        var burden = new Burden(studio, clock);
        var burdens = isBurdened ? [burden.Devices(stop.Token), burden.Backlog(stop.Token), burden.Backup(stop.Token)] : Array.Empty<Task>();

        var watch = Stopwatch.StartNew();
        var latencies = await Probe(studio, push, TimeSpan.FromSeconds(seconds), clock);
        var rate = burden.Taken / watch.Elapsed.TotalSeconds;
        var failed = burdens.FirstOrDefault(b => b.IsCompleted);
        if (failed is not null) await failed;
        await stop.CancelAsync();
        foreach (var one in burdens)
        {
            try { await one; }
            catch (Exception ended) when (ended is OperationCanceledException or MqttCommunicationException) { }
        }
        await lines.WriteLineAsync($"{(isBurdened ? $"{rate:0} readings/s acknowledged, rollup, backup, slow mail ({mail.Taken} mails taken)" : "nothing else to do")}, {slowDiskMilliseconds} ms added to each fsync:");
        await lines.WriteLineAsync($"  {latencies.Count} alarms: published to notified, median {Sorted.Quantile(latencies, 0.5):0} ms, 99th percentile {Sorted.Quantile(latencies, 0.99):0} ms, longest {latencies.Max():0} ms");
    }

    static async Task<List<double>> Probe(LiveStudio studio, PushReceiver push, TimeSpan time, TimeProvider clock)
    {
        await using var device = await Device.Connect(studio.MqttPort, "bench-probe", default);
        var latencies = new List<double>();
        var watch = Stopwatch.StartNew();
        for (var i = 0; watch.Elapsed < time; i++)
        {
            await device.Publish("probe", "crown", 1300, clock.GetUtcNow(), default);
            // An alarm wants two samples. Should it ring at the first, the times below would be too good to be true.
            if (i < WarmUps)
            {
                await Task.Delay(2 * Pause, clock);
                if (push.Calls.TryRead(out _)) throw new InvalidOperationException("the alarm rang at its first sample");
            }
            var published = Stopwatch.GetTimestamp();
            await device.Publish("probe", "crown", 1301, clock.GetUtcNow(), default);
            using var limit = new CancellationTokenSource(Lost, clock);
            var notified = await push.Calls.ReadAsync(limit.Token);
            if (i >= WarmUps) latencies.Add(Stopwatch.GetElapsedTime(published, notified).TotalMilliseconds);
            await device.Publish("probe", "crown", 1250, clock.GetUtcNow(), default);
            await device.Publish("probe", "crown", 1251, clock.GetUtcNow(), default);
            await Task.Delay(Pause, clock);
        }
        return latencies;
    }
}
