using System.CommandLine;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Web;
using HotShop.Monitor.Wiring;

namespace HotShop.Monitor.Commands;

static class RunCommand
{
    public static Command Make(TimeProvider clock)
    {
        var config = CommandLine.ConfigurationOption();
        var command = new Command("run", "Runs the service until it is stopped") { config };
        command.SetAction((parsed, stop) => Run(parsed.GetValue(config)!, clock, stop));
        return command;
    }

    static async Task<int> Run(FileInfo file, TimeProvider clock, CancellationToken stop)
    {
        var plan = CommandLine.Plan(file);
        // Topics heard so far stay known when the service begins again with a new channel.
        var unknown = new UnknownTopics();
        for (var isFirst = true; ; isFirst = false)
        {
            PagesPort.Check(plan.Configuration.Http.Listen, "choose another under http.listen");
            var fresh = new FreshStart(() => CommandLine.Plan(file));
            await using (var app = MonitorHost.Build(plan, new RunChoices(IsDemo: false, Speed: 1), clock, clock, b => b.Services.AddSingleton(fresh).AddSingleton(unknown)))
            {
                await app.StartAsync(stop);
                Say(plan, isFirst);
                await app.WaitForShutdownAsync(stop);
            }
            if (!fresh.IsWanted || stop.IsCancellationRequested) return CommandLine.Done;
            try
            {
                plan = fresh.Read();
            }
            catch (ConfigurationException wrong)
            {
                // Somebody edited the file in this very moment: better to watch with what was right than not at all.
                foreach (var problem in wrong.Problems) await Console.Error.WriteLineAsync($"{problem} Running on with the configuration as it was.");
            }
        }
    }

    static void Say(StudioPlan plan, bool isFirst)
    {
        Console.WriteLine($"{plan.Configuration.Name}: {(isFirst ? "" : "begun again, ")}pages at http://{plan.Configuration.Http.Listen}/, readings at {MonitorHost.BrokerText(plan)}. Stop with Ctrl+C.");
        if (!isFirst) return;
        foreach (var added in AddedChannels.Read(plan.DataDirectory)) Console.WriteLine($"  {AddedLine.Of(added, plan)}");
        foreach (var gap in ConfigurationGaps.Of(plan.Configuration)) Console.WriteLine($"  Still missing: {gap}.");
    }
}
