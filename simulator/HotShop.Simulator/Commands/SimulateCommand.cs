using System.CommandLine;
using HotShop.Simulator.Broker;
using HotShop.Simulator.Faults;
using HotShop.Simulator.Truth;
using Microsoft.Extensions.Logging;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Simulator.Commands;

/// <summary>`simulate`: plays the studio against a broker until Ctrl+C.</summary>
internal static class SimulateCommand
{
    static readonly Option<string> BrokerOption = new("--broker")
    {
        Description = "Broker to publish to, HOST:PORT.",
        DefaultValueFactory = _ => "127.0.0.1:1883",
    };

    static readonly Option<double> Speed = new("--speed")
    {
        Description = "How many times as fast as real time, 0.1 to 3600. Above 1 the studio's time runs ahead of the clock: give an earlier --start.",
        DefaultValueFactory = _ => 1,
    };

    static readonly Option<double?> Hours = new("--hours") { Description = "Stop after so many hours of the studio's time. Default: never." };
    static readonly Option<FileInfo?> TruthOption = new("--truth") { Description = "File for the hidden truth, JSON lines, one an hour." };
    static readonly Option<string?> User = new("--user") { Description = "User name for all devices." };
    static readonly Option<FileInfo?> PasswordFile = new("--password-file") { Description = "File whose first line is the password." };

    public static Command Create(TimeProvider wall)
    {
        var command = new Command("simulate", "Publish a studio's readings and log entries to an MQTT broker, QoS 1.")
        {
            BrokerOption, Speed, Hours, TruthOption, User, PasswordFile,
        };
        StudioChoice.AddTo(command);
        command.SetAction((parsed, stop) => RunAsync(parsed, wall, stop));
        return command;
    }

    static async Task<int> RunAsync(ParseResult parsed, TimeProvider wall, CancellationToken stop)
    {
        var problems = new List<string>();
        var (broker, brokerProblem) = BrokerAddress.Parse(parsed.GetValue(BrokerOption)!);
        if (brokerProblem is not null) problems.Add($"--broker: {brokerProblem}");
        var speed = parsed.GetValue(Speed);
        if (speed is not (>= 0.1 and <= 3600)) problems.Add($"--speed: {speed} is out of range; write a number from 0.1 to 3600");
        var password = parsed.GetValue(PasswordFile);
        if (password is { Exists: false }) problems.Add($"--password-file: there is no file '{password}'; write its path");
        var truthPath = parsed.GetValue(TruthOption);
        if (truthPath is { Directory.Exists: false })
            problems.Add($"--truth: there is no directory '{truthPath.Directory}'; write a path whose directory exists");
        var options = StudioChoice.Read(parsed, Instant.FromDateTimeOffset(wall.GetUtcNow()), speed, problems);
        if (options is null || problems.Count > 0) return StudioChoice.Refuse(problems);

        using var logging = LoggerFactory.Create(b => b.AddSimpleConsole(c => c.SingleLine = true));
        using var file = truthPath is null ? null : new StreamWriter(truthPath.FullName);
        var truth = file is null ? null : new TruthFile(file);
        var login = password is null ? null : (await File.ReadAllLinesAsync(password.FullName, stop)).FirstOrDefault();
        var studio = new SimulatedStudio(options);
        var clock = new ScaledClock(wall, options.Start, speed);
        var address = broker! with { User = parsed.GetValue(User), Password = login };
        var run = new SimulatorRun(studio, address, clock, wall, logging.CreateLogger("simulator"))
        {
            Advanced = s => truth?.Write(s.Truth),
        };
        await Console.Out.WriteLineAsync(
            $"Quillmere Hot Shop, seed {options.Seed}, from {InstantPattern.General.Format(options.Start)} at {speed} times real time, "
            + $"to {address.Host}:{address.Port}. Ctrl+C ends it.");
        try
        {
            await run.RunAsync(parsed.GetValue(Hours) is { } hours ? options.Start + Duration.FromHours(hours) : null, stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
        }

        await Console.Out.WriteLineAsync($"{run.Acknowledged} messages acknowledged, {run.Refused} refused, {run.Waiting} still waiting.");
        return run.Refused > 0 ? 1 : 0;
    }
}
