using System.Globalization;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>
/// The real program, killed with SIGKILL ten times while readings pour in, every second time after it hung (SIGSTOP). 2,000 readings here; HOTSHOP_KILL_READINGS=20000 for the full figure.
/// </summary>
public class KillTests(ITestOutputHelper output)
{
    const int Kills = 10;

    static readonly int Readings = int.Parse(Environment.GetEnvironmentVariable("HOTSHOP_KILL_READINGS") ?? "2000", CultureInfo.InvariantCulture);

    /// <summary>Slow enough that the kills fall into the stream, fast enough that a queue stands at each restart.</summary>
    static readonly int PerSecond = Math.Max(100, Readings / 40);

    static readonly RealClock Clock = new();

    [Fact]
    public async Task Readings_through_Mosquitto_survive_ten_kills_once_each()
    {
        await using var disturbedBroker = await Mosquitto.Start();
        await using var quietBroker = await Mosquitto.Start();
        using var disturbed = new Studio(disturbedBroker.Options(passwordFile: disturbedBroker.At("service.password")));
        using var quiet = new Studio(quietBroker.Options(passwordFile: quietBroker.At("service.password")));
        await Compare(disturbed, quiet,
            (_, readings) => CommandLinePublisher.Publish(disturbedBroker, readings, PerSecond), (_, readings) => CommandLinePublisher.Publish(quietBroker, readings, 1000), underWay: 40);
        // Killed once more at the end: the last will has to speak for it.
        await Patience.Until(() => disturbedBroker.Retained("hotshop/quillmere/out/service") == "offline", "the last will says offline");
    }

    [Fact]
    public async Task Readings_through_the_embedded_broker_survive_ten_kills_once_each()
    {
        int first = SomePlan.FreePort(), second = SomePlan.FreePort();
        using var disturbed = new Studio($$"""{ "listen": "127.0.0.1:{{first}}" }""");
        using var quiet = new Studio($$"""{ "listen": "127.0.0.1:{{second}}" }""");
        var device = new ResendingDevice(first);
        await Compare(disturbed, quiet, (_, readings) => device.Publish(readings, PerSecond), (_, readings) => new ResendingDevice(second).Publish(readings, 1000), underWay: 15);
        output.WriteLine($"sent again by the device: {device.Resent}");
    }

    async Task Compare(Studio disturbed, Studio quiet, Func<Studio, TimedReadings, Task> publish, Func<Studio, TimedReadings, Task> publishQuietly, int underWay)
    {
        var readings = new TimedReadings(Readings, Clock.GetUtcNow());
        await disturbed.RunThrough(readings, publish, Kills, underWay);
        await quiet.RunThrough(new TimedReadings(Readings, readings.MadeAt), publishQuietly, kills: 0, underWay);

        var rows = disturbed.Rows;
        output.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"readings {rows.Count()}, redelivered {rows.Counter("redelivered")}, of them already stored {rows.Counter("duplicate")}, conflicts {rows.Conflicts()}, hours {rows.Hours(readings.End).Count}"));
        Assert.Equal(readings.AsStored(), rows.Readings());
        Assert.True(rows.Counter("redelivered") > 0, "a kill in mid-stream makes the other side send again");
        Assert.Equal((0, 0), (rows.Conflicts(), rows.Refused()));
        Assert.True(rows.Hours(readings.End).Count >= 4, "the readings span hours");
        Assert.Equal(quiet.Rows.Hours(readings.End), rows.Hours(readings.End));
    }

    /// <summary>A configuration and a data folder for the program.</summary>
    sealed class Studio : IDisposable
    {
        readonly TemporaryFolder folder = new();
        readonly string configuration;

        public Studio(string broker)
        {
            configuration = folder.Write("hotshop.json", $$"""
                {
                  "site": "quillmere",
                  "http": { "listen": "127.0.0.1:{{SomePlan.FreePort()}}" },
                  "broker": {{broker}},
                  "store": { "ballastMebibytes": 1 },
                  "appliances": [ { "id": "furnace-1", "kind": "furnace", "channels": [ { "id": "crown", "quantity": "temperature" }, { "id": "gas", "quantity": "gas-flow" } ] } ]
                }
                """);
            Rows = new StoredRows(Path.Combine(folder.Path, "data"));
        }

        public StoredRows Rows { get; }

        public async Task RunThrough(TimedReadings readings, Func<Studio, TimedReadings, Task> publish, int kills, int underWay)
        {
            var chance = new Random(7);
            var service = await ServiceProcess.Start(configuration);
            try
            {
                await AllSubscribed(service);
                var publishing = publish(this, readings);
                for (var kill = 0; kill < kills; kill++)
                {
                    var threshold = readings.Count * (kill + chance.NextDouble()) / (kills + 1);
                    await Patience.Until(() => Rows.Count() > threshold || service.HasEnded || publishing.IsFaulted, () => $"{threshold:0} readings stored; there are {Rows.Count()}; the service says\n{service.Said}");
                    if (publishing.IsFaulted) await publishing;
                    Assert.False(service.HasEnded, $"it ended by itself:\n{service.Said}");
                    // A quick service has nothing under way at most moments. Every second time it hangs first, until messages are.
                    if (kill % 2 == 0) await Hang(service, readings, underWay, publishing);
                    await service.Kill();
                    service = await ServiceProcess.Start(configuration);
                }
                await publishing;
                var last = service;
                await Patience.Until(() => Rows.Count() >= readings.Count, () => $"{readings.Count} readings stored; there are {Rows.Count()}; the service says\n{last.Said}");
                await service.Stop();
                Assert.Equal(readings.Count, Rows.Count());

                // The rollup runs at each start; the hours of all readings have ended.
                service = await ServiceProcess.Start(configuration);
                await Patience.Until(() => Rows.Dirty(readings.End) == 0, () => "the hours are computed");
            }
            finally
            {
                await service.DisposeAsync();
            }
        }

        static async Task Hang(ServiceProcess service, TimedReadings readings, int underWay, Task publishing)
        {
            await service.Freeze();
            var before = readings.HandedOut;
            await Patience.Until(() => readings.HandedOut >= before + underWay || publishing.IsCompleted, () => $"{underWay} more readings are sent");
        }

        /// <summary>A broker keeps nothing for a session that has never been there.</summary>
        static Task AllSubscribed(ServiceProcess service) =>
            Patience.Until(() => service.Said.Contains("Connected to the broker", StringComparison.Ordinal) || service.Said.Contains("The broker listens", StringComparison.Ordinal),
                () => $"the service is at the broker; it says\n{service.Said}");

        public void Dispose() => folder.Dispose();
    }
}
