using System.Diagnostics;

namespace HotShop.Benchmarks.Live;

/// <summary>Readings a second from MQTT QoS 1 to the durable row: every client sends the next reading when the last is acknowledged.</summary>
static class RateBenchmark
{
    public static async Task Run(string folder, int seconds, TimeProvider clock, TextWriter lines)
    {
        await using var push = await PushReceiver.Start();
        using var mail = new SlowMail(clock);
        await using var studio = await LiveStudio.Start(folder, push.Url, mail.Port, new Dictionary<string, string>(), clock);
        foreach (var clients in new[] { 1, 20, 100 })
        {
            var (taken, elapsed) = await Measure(studio, clients, TimeSpan.FromSeconds(seconds), clock);
            await lines.WriteLineAsync($"{clients,4} clients, one reading in flight each: {taken / elapsed.TotalSeconds,6:0} readings/s");
        }
    }

    static async Task<(long Taken, TimeSpan Elapsed)> Measure(LiveStudio studio, int clients, TimeSpan time, TimeProvider clock)
    {
        var devices = new List<Device>();
        for (var i = 0; i < clients; i++) devices.Add(await Device.Connect(studio.MqttPort, $"rate-{clients}-{i}", default));
        var watch = Stopwatch.StartNew();
        var counts = await Task.WhenAll(devices.Select(async (device, number) =>
        {
            var appliance = $"furnace-{1 + number % LiveStudio.Devices}";
            var channel = LiveStudio.Channels[number / LiveStudio.Devices % LiveStudio.Channels.Length];
            var sent = 0L;
            for (; watch.Elapsed < time; sent++) await device.Publish(appliance, channel, ThirtyChannels.Value(channel, sent), clock.GetUtcNow(), default);
            return sent;
        }));
        var elapsed = watch.Elapsed;
        foreach (var device in devices) await device.DisposeAsync();
        return (counts.Sum(), elapsed);
    }
}
