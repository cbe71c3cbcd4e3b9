using HotShop.Monitor.Commands;
using HotShop.Monitor.Configuration;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HotShop.Monitor.Tests.Commands;

/// <summary>The command line: exit status 0, 1 or 2, and one line per problem on standard error. The console is one for all tests, so these run one after the other.</summary>
[Collection("console")]
public sealed class CommandTests : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-commands-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    internal static Task<(int Status, string Out, string Error)> Run(params string[] arguments) => Run(new FakeTimeProvider(), arguments);

    internal static async Task<(int Status, string Out, string Error)> Run(TimeProvider clock, params string[] arguments)
    {
        var (before, beforeError) = (Console.Out, Console.Error);
        using StringWriter said = new(), complained = new();
        Console.SetOut(said);
        Console.SetError(complained);
        try
        {
            return (await CommandLine.Run(arguments, clock), said.ToString(), complained.ToString());
        }
        finally
        {
            Console.SetOut(before);
            Console.SetError(beforeError);
        }
    }

    string Config => Path.Combine(folder, "hotshop.json");

    [Fact]
    public async Task Init_writes_a_file_that_check_finds_in_order()
    {
        var init = await Run("init", folder);
        Assert.Equal((0, ""), (init.Status, init.Error));
        Assert.True(File.Exists(Config) && File.Exists(Path.Combine(folder, ConfigurationSchema.FileName)));
        var check = await Run("check", "--config", Config);
        Assert.Equal((0, ""), (check.Status, check.Error));
        Assert.Contains("in order. 2 appliances, 4 channels", check.Out, StringComparison.Ordinal);
        // In order, but a studio like that is watched by nobody: said, not refused.
        Assert.Contains("Still missing: nobody is called", check.Out, StringComparison.Ordinal);
        Assert.Contains("Still missing: nobody outside would notice", check.Out, StringComparison.Ordinal);
        Assert.Equal(["hotshop.json", "hotshop.schema.json"], Directory.GetFileSystemEntries(folder).Select(f => Path.GetFileName(f)!).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Init_never_overwrites()
    {
        File.WriteAllText(Config, "mine");
        var init = await Run("init", folder);
        Assert.Equal(2, init.Status);
        Assert.Contains("is there already", init.Error, StringComparison.Ordinal);
        Assert.Equal("mine", File.ReadAllText(Config));
        Assert.Single(Directory.GetFiles(folder));
    }

    [Fact]
    public async Task Check_names_every_problem_on_a_line_of_its_own()
    {
        await Run("init", folder);
        File.WriteAllText(Config, File.ReadAllText(Config).Replace("Europe/Berlin", "Atlantis", StringComparison.Ordinal).Replace("\"EUR\"", "\"gold\"", StringComparison.Ordinal));
        var check = await Run("check", "--config", Config);
        Assert.Equal(2, check.Status);
        var lines = check.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, lines.Length);
        Assert.All(lines, l => Assert.StartsWith($"{Config}: ", l, StringComparison.Ordinal));
        Assert.Equal("", check.Out);
    }

    [Fact]
    public async Task Run_without_a_configuration_explains_init()
    {
        var run = await Run("run", "--config", Config);
        Assert.Equal(2, run.Status);
        Assert.Contains("hotshop init", Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(folder));
    }

    [Theory]
    [InlineData("fly")]
    [InlineData("check", "--colour")]
    [InlineData("demo", "--speed", "0")]
    [InlineData("demo", "--speed", "fast")]
    [InlineData("demo", "--port", "70000")]
    [InlineData("demo", "--scenario", "no-such-story")]
    public async Task Wrong_usage_is_said_and_ends_with_2(params string[] arguments)
    {
        var run = await Run(arguments);
        Assert.Equal(2, run.Status);
        Assert.Contains("hotshop", run.Error, StringComparison.Ordinal);
    }

    [Theory, InlineData("--help"), InlineData("run", "--help"), InlineData("demo", "--help"), InlineData("init", "--help"), InlineData("check", "--help")]
    public async Task Help_is_there_everywhere(params string[] arguments)
    {
        var help = await Run(arguments);
        Assert.Equal((0, ""), (help.Status, help.Error));
        Assert.Contains("Usage:", help.Out, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_in_place_of_the_file_is_said_in_one_line()
    {
        Directory.CreateDirectory(Config);
        var check = await Run("check", "--config", Config);
        Assert.Equal(2, check.Status);
        Assert.Single(check.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }
}

[CollectionDefinition("console", DisableParallelization = true)]
public class OneConsole;
