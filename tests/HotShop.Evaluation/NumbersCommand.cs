using System.CommandLine;
using HotShop.Checks;

namespace HotShop.Evaluation;

/// <summary>Writes the documents about the library's numbers: the table of published values and ours.</summary>
static class NumbersCommand
{
    public static Command Create()
    {
        var numbers = new Command("numbers", $"Writes {ChecksTable.Path}: every published value beside ours");
        numbers.SetAction(async _ =>
        {
            var file = Path.Combine(Repository.Root(), ChecksTable.Path);
            await File.WriteAllTextAsync(file, ChecksTable.Markdown(Topic.All));
            Console.WriteLine($"{file}: {Topic.All.Sum(t => t.Checks.Count)} checks");
            var wrong = Topic.All.SelectMany(t => t.Checks).Where(c => !c.Holds).ToList();
            foreach (var check in wrong) await Console.Error.WriteLineAsync($"not met: {check.What} ({check.Source})");
            return wrong.Count == 0 ? 0 : 1;
        });
        return numbers;
    }
}
