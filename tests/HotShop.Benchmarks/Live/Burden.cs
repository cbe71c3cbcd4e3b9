using Microsoft.Data.Sqlite;

namespace HotShop.Benchmarks.Live;

/// <summary>What the service has to bear while it is measured.</summary>
sealed class Burden(LiveStudio studio, TimeProvider clock)
{
    long taken;

    /// <summary>Readings acknowledged so far.</summary>
    public long Taken => Interlocked.Read(ref taken);

    /// <summary>Twenty devices, ten readings a second each.</summary>
    public async Task Devices(CancellationToken stop)
    {
        await Task.WhenAll(Enumerable.Range(1, LiveStudio.Devices).Select(async number =>
        {
            await using var device = await Device.Connect(studio.MqttPort, $"bench-{number}", stop);
            using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(100), clock);
            for (var i = 0L; await timer.WaitForNextTickAsync(stop); i++)
            {
                var channel = LiveStudio.Channels[i % LiveStudio.Channels.Length];
                await device.Publish($"furnace-{number}", channel, ThirtyChannels.Value(channel, i), clock.GetUtcNow(), stop);
                Interlocked.Increment(ref taken);
            }
        }));
    }

    /// <summary>Readings held back for hours, ten a second in one message: each makes an old hour wrong, which the rollup then computes again.</summary>
    public async Task Backlog(CancellationToken stop)
    {
        await using var device = await Device.Connect(studio.MqttPort, "bench-backlog", stop);
        using var timer = new PeriodicTimer(TimeSpan.FromSeconds(1), clock);
        var hour = clock.GetUtcNow() - TimeSpan.FromHours(30);
        for (var i = 0; await timer.WaitForNextTickAsync(stop); i++)
        {
            var from = hour + TimeSpan.FromHours(i % 24) + TimeSpan.FromSeconds(i / 24 * 30);
            var rows = Enumerable.Range(0, 10).Select(k => Device.Row(1140 + k, from + TimeSpan.FromSeconds(3 * k)));
            await device.Publish($"furnace-{1 + i % LiveStudio.Devices}", "crown", $"[{string.Join(',', rows)}]", stop);
        }
    }

    /// <summary>As a backup does: a read transaction held open for seconds, and the whole database copied, over and over.</summary>
    public async Task Backup(CancellationToken stop)
    {
        var copy = Path.Combine(studio.Folder, "copy.db");
        while (!stop.IsCancellationRequested)
        {
            await using (var source = new SqliteConnection($"Data Source={studio.Database};Mode=ReadOnly;Pooling=False"))
            {
                await source.OpenAsync(stop);
                await using var held = await source.BeginTransactionAsync(System.Data.IsolationLevel.Serializable, stop);
                await using var count = source.CreateCommand();
                count.CommandText = "SELECT count(*), sum(value) FROM arrival";
                count.Transaction = (SqliteTransaction)held;
                await count.ExecuteScalarAsync(stop);
                await Task.Delay(TimeSpan.FromSeconds(3), clock, stop);
                await using var target = new SqliteConnection($"Data Source={copy};Pooling=False");
                source.BackupDatabase(target);
            }
            File.Delete(copy);
        }
    }
}
