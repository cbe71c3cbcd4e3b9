using System.CommandLine;
using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Commands;

static class CheckCommand
{
    public static Command Make()
    {
        var config = CommandLine.ConfigurationOption();
        var command = new Command("check", "Checks the configuration without starting anything") { config };
        command.SetAction(parsed =>
        {
            var file = parsed.GetValue(config)!;
            var plan = PlanBuilder.Build(ConfigurationFile.Read(file.FullName), file.DirectoryName!);
            Console.WriteLine($"{file.FullName}: in order. {plan.Appliances.Count} appliances, {plan.Channels.All.Count} channels, {plan.Configuration.People.Count} people.");
            foreach (var added in AddedChannels.Read(plan.DataDirectory)) Console.WriteLine($"  {AddedLine.Of(added, plan)}");
            foreach (var gap in ConfigurationGaps.Of(plan.Configuration)) Console.WriteLine($"  Still missing: {gap}.");
            return CommandLine.Done;
        });
        return command;
    }
}
