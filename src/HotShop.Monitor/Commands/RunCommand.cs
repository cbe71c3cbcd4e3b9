using System.CommandLine;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Web;

namespace HotShop.Monitor.Commands;

static class RunCommand
{
    public static Command Make(TimeProvider clock)
    {
        var config = CommandLine.ConfigurationOption();
        var command = new Command("run", "Runs the service until it is stopped") { config };
        command.SetAction(async (parsed, stop) =>
        {
            var file = parsed.GetValue(config)!;
            var plan = PlanBuilder.Build(ConfigurationFile.Read(file.FullName), file.DirectoryName!);
            PagesPort.Check(plan.Configuration.Http.Listen, "choose another under http.listen");
            await using var app = MonitorHost.Build(plan, new RunChoices(IsDemo: false, Speed: 1), clock, clock);
            await app.StartAsync(stop);
            Console.WriteLine($"{plan.Configuration.Name}: pages at http://{plan.Configuration.Http.Listen}/, readings at {MonitorHost.BrokerText(plan)}. Stop with Ctrl+C.");
            foreach (var gap in ConfigurationGaps.Of(plan.Configuration)) Console.WriteLine($"  Still missing: {gap}.");
            await app.WaitForShutdownAsync(stop);
            return CommandLine.Done;
        });
        return command;
    }
}
