using System.CommandLine;
using HotShop.Simulator.Faults;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Simulator.Commands;

/// <summary>The options that choose a studio and its story, shared by the commands.</summary>
internal static class StudioChoice
{
    static readonly Option<int> Seed = new("--seed")
    {
        Description = "Chooses people, noise and the hidden plant.",
        DefaultValueFactory = _ => 1,
    };

    static readonly Option<string> ScenarioOption = new("--scenario")
    {
        Description = $"Story: {string.Join(", ", Scenarios.Names)}.",
        DefaultValueFactory = _ => "ordinary-day",
    };

    static readonly Option<string[]> Fault = new("--fault")
    {
        Description = $"More faults, KIND@APPLIANCE+HH:MM/HH:MM (after the start / length). Kinds: {string.Join(", ", FaultOrder.Words)}.",
        AllowMultipleArgumentsPerToken = true,
    };

    static readonly Option<string?> StartOption = new("--start") { Description = "When the studio's time begins, RFC 3339. Default: now." };

    static readonly Option<string> Zone = new("--zone")
    {
        Description = "IANA time zone of the crew.",
        DefaultValueFactory = _ => "Europe/Berlin",
    };

    static readonly Option<int?> Sample = new("--sample-seconds")
    {
        Description = "Seconds between two samples, 2 to 3600. Default 10, at speeds above 60: 30.",
    };

    public static void AddTo(Command command)
    {
        foreach (var option in new Option[] { Seed, ScenarioOption, Fault, StartOption, Zone, Sample }) command.Options.Add(option);
    }

    /// <returns><see langword="null"/> when something is wrong; <paramref name="problems"/> says what.</returns>
    public static SimulationOptions? Read(ParseResult parsed, Instant now, double speed, List<string> problems)
    {
        var zone = DateTimeZoneProviders.Tzdb.GetZoneOrNull(parsed.GetValue(Zone)!);
        if (zone is null) problems.Add($"--zone: '{parsed.GetValue(Zone)}' is no IANA time zone; write one such as Europe/Berlin");
        var start = parsed.GetValue(StartOption) is { } text ? Time(text) : now;
        if (start is null) problems.Add($"--start: '{parsed.GetValue(StartOption)}' is no time; write one such as 2026-03-03T08:00:00+01:00");
        var sample = parsed.GetValue(Sample) ?? (speed > 60 ? 30 : 10);
        if (sample is < 2 or > 3600) problems.Add($"--sample-seconds: {sample} is out of range; write a number from 2 to 3600");
        var faults = new List<FaultOrder>();
        foreach (var word in parsed.GetValue(Fault) ?? [])
        {
            var (order, problem) = FaultOrder.Parse(word);
            if (order is null) problems.Add($"--fault: {problem}");
            else faults.Add(order);
        }

        if (zone is null || start is not { } begin) return null;
        if (Scenarios.Named(parsed.GetValue(ScenarioOption)!, begin, zone) is not { } scenario)
        {
            problems.Add($"--scenario: there is no '{parsed.GetValue(ScenarioOption)}'; write one of {string.Join(", ", Scenarios.Names)}");
            return null;
        }

        return new SimulationOptions
        {
            Seed = parsed.GetValue(Seed), Start = begin, Zone = zone, SampleSeconds = sample, Faults = [.. scenario.Faults, .. faults],
        };
    }

    static Instant? Time(string text) => OffsetDateTimePattern.Rfc3339.Parse(text) is { Success: true } read ? read.Value.ToInstant() : null;

    /// <summary>One line for each problem on standard error.</summary>
    public static int Refuse(IEnumerable<string> problems)
    {
        foreach (var problem in problems) Console.Error.WriteLine(problem);
        return 2;
    }
}
