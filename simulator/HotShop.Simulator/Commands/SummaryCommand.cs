using System.CommandLine;
using HotShop.Simulator.Truth;
using NodaTime;

namespace HotShop.Simulator.Commands;

/// <summary>`summary`: what some days at the studio look like, from the hidden truth.</summary>
internal static class SummaryCommand
{
    static readonly Option<int> Days = new("--days") { Description = "How many days, 1 to 400.", DefaultValueFactory = _ => 30 };

    public static Command Create(TimeProvider wall)
    {
        var command = new Command("summary", "Run a studio without a broker and print temperatures, fuel and glass from its hidden truth.") { Days };
        StudioChoice.AddTo(command);
        command.SetAction(parsed =>
        {
            var problems = new List<string>();
            var days = parsed.GetValue(Days);
            if (days is < 1 or > 400) problems.Add($"--days: {days} is out of range; write a number from 1 to 400");
            var options = StudioChoice.Read(parsed, Instant.FromDateTimeOffset(wall.GetUtcNow()), speed: 1, problems);
            if (options is null || problems.Count > 0) return StudioChoice.Refuse(problems);
            Console.WriteLine(RunSummary.Of(options, days));
            return 0;
        });
        return command;
    }
}
