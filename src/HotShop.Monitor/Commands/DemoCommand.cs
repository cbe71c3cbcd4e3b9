using System.CommandLine;
using System.CommandLine.Parsing;
using System.Globalization;
using HotShop.Monitor.Demo;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Store;
using HotShop.Monitor.Web;
using HotShop.Simulator.Faults;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Commands;

static class DemoCommand
{
    public static Command Make(TimeProvider clock)
    {
        var speed = new Option<double>("--speed") { Description = "Seconds of the studio per real second, 1 to 3600; 60 is a minute a second", DefaultValueFactory = _ => 60 };
        var scenario = new Option<string>("--scenario") { Description = $"Story: {string.Join(", ", Scenarios.Names)}", DefaultValueFactory = _ => "first-light" };
        var seed = new Option<int>("--seed") { Description = "Chooses people, noise and the hidden plant", DefaultValueFactory = _ => 1 };
        var port = new Option<int>("--port") { Description = "Port of the pages on this computer", DefaultValueFactory = _ => 5080 };
        var data = new Option<DirectoryInfo?>("--data") { Description = "Folder that keeps the demo's data; without it they are removed at the end" };
        // What is no number is refused by the parser itself; asking it for the value would throw.
        speed.Validators.Add(r => { if (Typed(r) is not (null or >= 1 and <= 3600)) r.AddError("--speed: write a number from 1 to 3600."); });
        scenario.Validators.Add(r => { if (!Scenarios.Names.Contains(r.GetValue(scenario))) r.AddError($"--scenario: there is no '{r.GetValue(scenario)}'; write one of {string.Join(", ", Scenarios.Names)}."); });
        port.Validators.Add(r => { if (Typed(r) is not (null or >= 1 and <= 65535)) r.AddError("--port: write a number from 1 to 65535."); });
        var command = new Command("demo", "Runs the service with an invented, simulated studio: nothing to set up") { speed, scenario, seed, port, data };
        command.SetAction((parsed, stop) => Run(
            new DemoChoices(parsed.GetValue(speed), parsed.GetValue(scenario)!, parsed.GetValue(seed), parsed.GetValue(port), parsed.GetValue(data)?.FullName), clock, stop));
        return command;
    }

    static double? Typed(OptionResult option) =>
        option.Tokens.Count == 1 && double.TryParse(option.Tokens[0].Value, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : null;

    static async Task<int> Run(DemoChoices choices, TimeProvider wall, CancellationToken stop)
    {
        PagesPort.Check($"127.0.0.1:{choices.Port}", "choose another with --port");
        var folder = choices.DataDirectory ?? Directory.CreateTempSubdirectory("hotshop-demo-").FullName;
        try
        {
            var plan = DemoPlan.Make(choices, folder);
            var clock = new ScaledClock(wall, choices.Speed, DemoPlan.Start(wall.GetUtcNow().ToInstant(), plan.Zone, StudioStore.NewestReading(folder)).ToDateTimeOffset());
            await using var app = MonitorHost.Build(plan, new RunChoices(IsDemo: true, choices.Speed), wall, clock, builder =>
            {
                builder.Services.AddSingleton(choices).AddSingleton(new DemoClocks(wall, clock)).AddSingleton<DemoPhone>();
                builder.Services.AddHostedService<DemoStudio>();
            });
            app.MapDemoPhone();
            await app.StartAsync(stop);
            Console.WriteLine($"""
                {plan.Configuration.Name}, an invented studio, at {choices.Speed:0.#} times real time (story: {choices.Scenario}, seed {choices.Seed}).
                  Pages   http://127.0.0.1:{choices.Port}/
                  Phone   http://127.0.0.1:{choices.Port}{DemoPlan.PhonePath}   what the night phones were sent
                  Broker  mqtt://{plan.Configuration.Broker.Listen}
                  Data    {folder}{(choices.DataDirectory is null ? " (removed at the end; --data DIR keeps them)" : "")}
                Stop with Ctrl+C.
                """);
            await app.WaitForShutdownAsync(stop);
            return CommandLine.Done;
        }
        finally
        {
            if (choices.DataDirectory is null) Directory.Delete(folder, recursive: true);
        }
    }
}
