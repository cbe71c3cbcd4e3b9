using System.CommandLine;
using HotShop.Checks;

namespace HotShop.Evaluation.Numbers;

/// <summary>Writes the documents about the library's numbers: the table of published values and ours, and the pictures of the methods.</summary>
static class NumbersCommand
{
    public static Command Create()
    {
        var pictures = new Option<bool>("--pictures") { Description = "Draw the pictures of docs/numbers.md as well" };
        var numbers = new Command("numbers", $"Writes {ChecksTable.Path}: every published value beside ours") { pictures };
        numbers.SetAction(async parsed =>
        {
            if (parsed.GetValue(pictures)) foreach (var picture in NumberPicture.All) await File.WriteAllBytesAsync(Path.Combine(Repository.Root(), picture.File), picture.Png());
            return await Table();
        });
        return numbers;
    }

    static async Task<int> Table()
    {
        var file = Path.Combine(Repository.Root(), ChecksTable.Path);
        await File.WriteAllTextAsync(file, ChecksTable.Markdown(Topic.All));
        await Console.Out.WriteLineAsync($"{file}: {Topic.All.Sum(t => t.Checks.Count)} checks");
        var wrong = Topic.All.SelectMany(t => t.Checks).Where(c => !c.Holds).ToList();
        foreach (var check in wrong) await Console.Error.WriteLineAsync($"not met: {check.What} ({check.Source})");
        return wrong.Count == 0 ? 0 : 1;
    }
}
