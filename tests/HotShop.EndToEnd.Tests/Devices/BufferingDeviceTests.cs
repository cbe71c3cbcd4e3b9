using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Devices;

/// <summary>The device of docs/devices.md, as it is printed there.</summary>
public sealed partial class BufferingDeviceTests(ITestOutputHelper output)
{
    [GeneratedRegex("```python\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Code();

    [Fact]
    public async Task The_device_of_the_documentation_loses_nothing_while_the_service_is_killed_and_sends_each_reading_once()
    {
        using var folder = new TemporaryFolder();
        var port = Ports.Free();
        var file = folder.Write("hotshop.json", $$"""
            { "site": "my-studio", "dataDirectory": "data", "http": { "listen": "127.0.0.1:{{Ports.Free()}}" }, "broker": { "listen": "127.0.0.1:{{port}}" }, "store": { "ballastMebibytes": 1 },
              "appliances": [ { "id": "furnace-1", "kind": "furnace", "channels": [ { "id": "crown", "quantity": "temperature" } ] } ] }
            """);
        var rows = new StoredRows(Path.Combine(folder.Path, "data"));
        using var device = Start(folder, port);
        try
        {
            await using (var first = await ServiceProcess.Start(file))
            {
                await Patience.Until(() => rows.Count() >= 2, "the first readings are stored");
                await first.Kill();
            }
            var before = rows.Count();
            await Patience.Until(() => Measured(folder).Count >= before + 4, "the device measures on while nobody answers");
            Assert.Equal(before, rows.Count());

            await using var second = await ServiceProcess.Start(file);
            var kept = Measured(folder).Count;
            await Patience.Until(() => rows.Count() > kept, () => $"the backlog is stored; there are {rows.Count()} rows of {Measured(folder).Count} measurements");
            await Stop(device);
            var stored = Stored(rows);
            // The last one may have been measured and not yet sent when the device was switched off.
            Assert.InRange(Measured(folder).Count - stored.Count, 0, 1);
            Assert.Equal(Measured(folder).Take(stored.Count), stored);
            Assert.Equal((0, 0), (rows.Conflicts(), rows.Refused()));
            output.WriteLine($"{before} readings before the kill, {kept - before} kept by the device while nobody answered, {stored.Count - kept} after");
            Assert.Equal(0, await second.Stop());
        }
        finally
        {
            await Stop(device);
        }
    }

    static async Task Stop(Process device)
    {
        device.Kill();
        await device.WaitForExitAsync(CancellationToken.None);
    }

    /// <summary>The printed code with the studio's address in place of the example's, once a second.</summary>
    static Process Start(TemporaryFolder folder, int port)
    {
        var code = Code().Match(File.ReadAllText(Path.Combine(Repository.Root, "docs/devices.md"))).Groups[1].Value;
        Assert.True(code.Length > 500, "docs/devices.md has the device's code");
        folder.Write("furnace_probe.py", Instead(Instead(code, """BROKER, PORT = "192.168.1.20", 1883""", $"""BROKER, PORT = "127.0.0.1", {port}"""), "EVERY_SECONDS = 10", "EVERY_SECONDS = 1"));
        folder.Write("sensor.py", """
            count = 0
            def read_celsius():
                global count
                count += 1
                with open("measured.txt", "a") as notes:
                    notes.write("%d\n" % (1100 + count))
                return 1100 + count
            """);
        Directory.CreateDirectory(Path.Combine(folder.Path, "umqtt"));
        File.Copy(Path.Combine(Repository.Root, "tests/HotShop.EndToEnd.Tests/Devices/umqtt/simple.py"), Path.Combine(folder.Path, "umqtt/simple.py"));
        return Process.Start(new ProcessStartInfo(Mosquitto.Find("python3"), ["furnace_probe.py"]) { WorkingDirectory = folder.Path })!;
    }

    static string Instead(string code, string printed, string here)
    {
        Assert.Contains(printed, code, StringComparison.Ordinal);
        return code.Replace(printed, here, StringComparison.Ordinal);
    }

    static List<double> Measured(TemporaryFolder folder) =>
        File.Exists(Path.Combine(folder.Path, "measured.txt")) ? [.. File.ReadAllLines(Path.Combine(folder.Path, "measured.txt")).Select(l => double.Parse(l, CultureInfo.InvariantCulture))] : [];

    static List<double> Stored(StoredRows rows) =>
        [.. rows.Readings().Select(r => BitConverter.Int64BitsToDouble(long.Parse(r.Split(' ')[2], NumberStyles.HexNumber, CultureInfo.InvariantCulture)))];
}
