using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using HotShop.Monitor.Configuration;

namespace HotShop.Benchmarks.Live;

/// <summary>A real `hotshop run` in a process of its own, with twenty furnaces of sensors, one more for the alarm, and a person with push and mail.</summary>
sealed class LiveStudio : IAsyncDisposable
{
    public const int Devices = 20;
    public static readonly string[] Channels = ["crown", "wall", "setpoint", "gas-flow", "power", "pressure"];
    static readonly string[] Quantities = ["temperature", "temperature", "setpoint", "gas-flow", "power", "pressure"];

    readonly Process process;

    LiveStudio(Process process, string folder, int mqttPort, int httpPort) => (this.process, Folder, MqttPort, HttpPort) = (process, folder, mqttPort, httpPort);

    public string Folder { get; }
    public int MqttPort { get; }
    public int HttpPort { get; }

    /// <summary>Most memory the service had at once until now, 10^6 bytes.</summary>
    public double PeakMegabytes
    {
        get
        {
            process.Refresh();
            return process.PeakWorkingSet64 / 1e6;
        }
    }

    public string Database => Path.Combine(Folder, "data", "hotshop.db");

    public static async Task<LiveStudio> Start(string folder, string pushUrl, int mailPort, IReadOnlyDictionary<string, string> environment, TimeProvider clock)
    {
        var (mqtt, http) = (FreePort(), FreePort());
        var configuration = new StudioConfiguration
        {
            Site = "bench",
            Http = new() { Listen = $"127.0.0.1:{http}" },
            Broker = new() { Listen = $"127.0.0.1:{mqtt}" },
            Store = new() { BallastMebibytes = 1 },
            Appliances = [Probe(), .. Enumerable.Range(1, Devices).Select(Furnace)],
            People = [new() { Id = "bench", Name = "Bench", Outlets = [new() { Kind = "push", Url = pushUrl }, new() { Kind = "mail", Address = "bench@studio.example" }] }],
            Notifications = new() { Order = ["bench"], Mail = new() { Host = "127.0.0.1", Port = mailPort, Security = "none", From = "hotshop@studio.example" } },
        };
        var file = Path.Combine(folder, "hotshop.json");
        await File.WriteAllTextAsync(file, JsonSerializer.Serialize(configuration, ConfigurationFile.Json));
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "hotshop.dll"), "run", "--config", file]) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var (name, value) in environment) start.Environment[name] = value;
        var studio = new LiveStudio(Process.Start(start)!, folder, mqtt, http);
        studio.process.OutputDataReceived += (_, _) => { };
        studio.process.ErrorDataReceived += (_, line) => { if (line.Data is { } text) Console.Error.WriteLine(text); };
        studio.process.BeginOutputReadLine();
        studio.process.BeginErrorReadLine();
        await studio.UntilReady(clock);
        return studio;
    }

    /// <summary>Its overheat alarm rings at the second sample above the limit, without a delay of its own.</summary>
    static ApplianceOptions Probe() => new()
    {
        Id = "probe",
        Kind = "furnace",
        Channels = [new() { Id = "crown", Quantity = "temperature" }],
        Alarms = new Dictionary<string, AlarmOptions>
        {
            ["overheat"] = new() { Limit = "1290 °C", Deadband = "1 K", OnDelaySeconds = 0, OffDelaySeconds = 0 },
            ["silent"] = new() { Enabled = false },
        },
    };

    static ApplianceOptions Furnace(int number) => new()
    {
        Id = $"furnace-{number}",
        Kind = "furnace",
        Channels = [.. Channels.Zip(Quantities, (id, quantity) => new ChannelOptions { Id = id, Quantity = quantity })],
        Alarms = new Dictionary<string, AlarmOptions> { ["silent"] = new() { Enabled = false } },
    };

    async Task UntilReady(TimeProvider clock)
    {
        using var client = new HttpClient();
        for (var attempt = 0; attempt < 600; attempt++)
        {
            if (process.HasExited) throw new InvalidOperationException($"hotshop ended with {process.ExitCode}");
            try
            {
                using var answer = await client.GetAsync(new Uri($"http://127.0.0.1:{HttpPort}/readyz"));
                if (answer.IsSuccessStatusCode) return;
            }
            catch (HttpRequestException) { }
            await Task.Delay(TimeSpan.FromMilliseconds(100), clock);
        }
        throw new TimeoutException("hotshop was not ready within a minute");
    }

    static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        process.Kill();
        await process.WaitForExitAsync();
        process.Dispose();
    }
}
