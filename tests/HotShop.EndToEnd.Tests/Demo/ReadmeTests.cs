using System.Diagnostics;
using System.Text.RegularExpressions;
using HotShop.EndToEnd.Tests.Broker;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Tests.Broker;
using Xunit;

namespace HotShop.EndToEnd.Tests.Demo;

/// <summary>Does what the README tells a stranger to do, line by line.</summary>
public sealed partial class ReadmeTests : IDisposable
{
    const string Start = "dotnet run --project src/HotShop.Monitor -- ";

    readonly string folder = Directory.CreateTempSubdirectory("hotshop-readme-").FullName;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Fact]
    public async Task The_two_commands_are_there_and_can_be_run()
    {
        var commands = Commands().Where(c => c.StartsWith("./", StringComparison.Ordinal)).Select(c => c.Split(' ')[0]).Distinct().ToList();
        Assert.Equal(["./demo", "./test"], commands.Order(StringComparer.Ordinal));
        foreach (var command in commands) await Shell($"cd '{Repository.Root}' && test -x {command} && bash -n {command}");
    }

    [Fact]
    public async Task Its_commands_make_check_and_run_a_studio_that_stores_the_readings_it_sends()
    {
        var commands = Commands();
        var before = commands.Where(c => c.StartsWith(Start + "init", StringComparison.Ordinal) || c.StartsWith(Start + "check", StringComparison.Ordinal)).ToList();
        Assert.Equal(2, before.Count);
        foreach (var command in before)
        {
            var (status, ended) = await ServiceProcess.ToItsEnd(folder, command[Start.Length..].Split(' '));
            Assert.True(status == 0, $"{command}\n{ended.Said}");
        }
        var (broker, configuration) = await WithFreePorts(Path.Combine(folder, "my-studio", "hotshop.json"));

        Assert.Contains(Start + "run --config my-studio/hotshop.json", commands);
        await using (var service = await ServiceProcess.Start(configuration))
        {
            await Patience.Until(() => service.Said.Contains("The broker listens", StringComparison.Ordinal), () => $"the broker listens; it says\n{service.Said}");
            Assert.Contains("set-up code", service.Said, StringComparison.Ordinal);
            var sent = commands.Where(c => c.StartsWith("mosquitto_pub ", StringComparison.Ordinal)).ToList();
            Assert.Equal(2, sent.Count);
            foreach (var command in sent) await Shell($"{Mosquitto.Find("mosquitto_pub")} -p {broker} {command["mosquitto_pub ".Length..]}");
            var stored = new StoredRows(Path.Combine(folder, "my-studio", "data"));
            Assert.Equal((2, 0), (stored.Count(), stored.Refused()));
            Assert.Equal(0, await service.Stop());
        }
        Assert.Empty(ServiceLog.Errors(Path.Combine(folder, "my-studio", "data")));
    }

    /// <summary>The usual ports may be in use on this machine; nothing else of the written file is changed.</summary>
    static async Task<(int Broker, string File)> WithFreePorts(string file)
    {
        var broker = Ports.Free();
        var text = await File.ReadAllTextAsync(file, Stop);
        await File.WriteAllTextAsync(file, text.Replace("\"127.0.0.1:5080\"", $"\"127.0.0.1:{Ports.Free()}\"", StringComparison.Ordinal)
            .Replace("\"127.0.0.1:1883\"", $"\"127.0.0.1:{broker}\"", StringComparison.Ordinal), Stop);
        return (broker, file);
    }

    static async Task Shell(string line)
    {
        using var shell = Process.Start("/bin/sh", ["-c", line]);
        await Patience.For(shell.WaitForExitAsync());
        Assert.True(shell.ExitCode == 0, line);
    }

    static IReadOnlyList<string> Commands() => [.. Block().Matches(File.ReadAllText(Path.Combine(Repository.Root, "README.md")))
        .SelectMany(b => b.Groups[1].Value.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))];

    [GeneratedRegex(@"```sh\n(.*?)```", RegexOptions.Singleline)]
    private static partial Regex Block();
}
