using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using HotShop.Simulator.Faults;
using HotShop.Simulator.Tests.Broker;

namespace HotShop.Simulator.Tests;

/// <summary>What docs/simulator.md says is so.</summary>
public partial class DocumentTests
{
    static readonly string Text = File.ReadAllText(Path.Combine(Root(), "docs", "simulator.md"));

    [Fact]
    public async Task The_commands_in_the_document_run()
    {
        await using var broker = new TestBroker();
        await broker.StartAsync();
        var directory = Directory.CreateTempSubdirectory("simulator-document");
        var commands = CommandForm().Matches(Text).Select(m => m.Groups[1].Value.Trim()).ToArray();
        Assert.Equal(2, commands.Length);
        foreach (var command in commands)
        {
            var arguments = command.Replace("127.0.0.1:1883", $"127.0.0.1:{broker.Port}", StringComparison.Ordinal).Split(' ');
            using var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "HotShop.Simulator.dll"), .. arguments])
            {
                WorkingDirectory = directory.FullName,
                RedirectStandardOutput = true,
            })!;
            await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
            await process.WaitForExitAsync(TestContext.Current.CancellationToken);
            Assert.Equal(0, process.ExitCode);
        }

        Assert.True(broker.Received.Count > 1000);
        Assert.Equal(2, File.ReadAllLines(Path.Combine(directory.FullName, "truth.jsonl")).Length);
        directory.Delete(recursive: true);
    }

    [Fact]
    public void The_channels_in_the_document_are_those_that_report()
    {
        var table = Text[Text.IndexOf("## Channels", StringComparison.Ordinal)..Text.IndexOf("Curves:", StringComparison.Ordinal)];
        var written = table.Split('\n').Where(row => row.StartsWith("| `", StringComparison.Ordinal))
            .SelectMany(row => NameForm().Matches(row.Split('|')[1]).Select(m => m.Groups[1].Value));
        var sent = Run.Studio().Advance(Run.At(12)).Where(m => m.Device != "dev-bench").Select(m => m.Topic["hotshop/quillmere/".Length..]).Distinct();
        Assert.Equal(sent.Order(), written.Order());
    }

    [Fact]
    public void The_document_names_every_kind_of_fault() =>
        Assert.All(FaultOrder.Words, word => Assert.Contains($"`{word}`", Text, StringComparison.Ordinal));

    static string Root([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", ".."));

    [GeneratedRegex("^    dotnet run --project simulator/HotShop.Simulator -- (.*)$", RegexOptions.Multiline)]
    private static partial Regex CommandForm();

    [GeneratedRegex("`([a-z0-9/-]+)`")]
    private static partial Regex NameForm();
}
