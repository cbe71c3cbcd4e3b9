using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Phone;
using HotShop.Monitor.Configuration;
using Xunit;

namespace HotShop.EndToEnd.Tests.Demo;

/// <summary>What the commands say when something is wrong, and with which exit status.</summary>
public sealed class CommandTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-commands-").FullName;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("run")]
    [InlineData("check")]
    public async Task A_wrong_configuration_ends_with_status_2_and_one_line_a_problem(string command)
    {
        var file = Path.Combine(folder, "hotshop.json");
        await File.WriteAllTextAsync(file, """
            { "site": "Quillmere Shop", "zone": "Europe/Nowhere", "appliances": [ { "id": "furnace-1", "kind": "furnace",
              "channels": [ { "id": "crown", "quantity": "temperature" } ], "alarms": { "overheat": { "limit": "2300 °C" } } } ] }
            """, Stop);
        var (status, ended) = await ServiceProcess.ToItsEnd(folder, command, "--config", file);
        Assert.Equal(2, status);
        Assert.Equal(3, ended.Complaints.Count);
        Assert.All(new[] { "site", "zone", "limit" }, part => Assert.Contains(ended.Complaints, line => line.Contains(part, StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Run_without_a_configuration_explains_init_and_ends_with_status_2()
    {
        var (status, ended) = await ServiceProcess.ToItsEnd(folder, "run");
        Assert.Equal(2, status);
        Assert.Contains("hotshop init", Assert.Single(ended.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_port_that_is_taken_ends_with_status_1_and_one_line_that_names_it()
    {
        var studio = NightPlan.Configuration(Path.Combine(folder, "data"), new Uri("http://127.0.0.1:9/"), mailPort: 25);
        var file = Path.Combine(folder, "hotshop.json");
        await File.WriteAllTextAsync(file, JsonSerializer.Serialize(studio, ConfigurationFile.Json), Stop);
        using var taken = new TcpListener(IPEndPoint.Parse(studio.Http.Listen));
        taken.Start();
        var (status, ended) = await ServiceProcess.ToItsEnd(folder, "run", "--config", file);
        Assert.Equal(1, status);
        Assert.Contains(studio.Http.Listen, Assert.Single(ended.Complaints), StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", ended.Said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_command_or_story_ends_with_status_2()
    {
        Assert.Equal(2, (await ServiceProcess.ToItsEnd(folder, "melt")).Status);
        var (status, ended) = await ServiceProcess.ToItsEnd(folder, "demo", "--scenario", "quiet-sea");
        Assert.Equal(2, status);
        Assert.Contains("first-light", Assert.Single(ended.Complaints), StringComparison.Ordinal);
    }
}
