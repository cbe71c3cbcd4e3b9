using System.CommandLine;
using HotShop.Evaluation;
using HotShop.Evaluation.Cards;
using HotShop.Evaluation.Numbers;

Card[] cards = [PotCard.Card, QuietCard.Card, FuelCard.Card, TypedCard.Card, PerKilogramCard.Card, AnnealingCard.Card];
var name = new Argument<string>("card") { Description = string.Join("; ", cards.Select(c => $"{c.Name}: {c.Tells} (usually {c.UsualCount} seeds of {c.UsualDays} days)")) };
name.AcceptOnlyFromAmong([.. cards.Select(c => c.Name)]);
var seed = new Option<int>("--seed") { Description = "First seed; the others follow it", DefaultValueFactory = _ => 1 };
var count = new Option<int?>("--count") { Description = "Number of seeds, 1 to 1000" };
var days = new Option<int?>("--days") { Description = "Simulated days of each, 1 to 366" };
var json = new Option<FileInfo?>("--json") { Description = "File for the scores as JSON" };
count.Validators.Add(r => { if (r.GetValueOrDefault<int?>() is < 1 or > 1000) r.AddError("--count must lie between 1 and 1000."); });
days.Validators.Add(r => { if (r.GetValueOrDefault<int?>() is < 1 or > 366) r.AddError("--days must lie between 1 and 366."); });

var root = new RootCommand("Marks the service's answers against the simulator's hidden truth.") { name, seed, count, days, json, NumbersCommand.Create() };
root.SetAction(async parsed =>
{
    var card = cards.First(c => c.Name == parsed.GetValue(name));
    var request = new Request(parsed.GetValue(seed), parsed.GetValue(count) ?? card.UsualCount, parsed.GetValue(days) ?? card.UsualDays);
    var score = new Scorecard(card.Name, request.Seed, await card.Judge(request, Console.Out));
    await ScorePrint.Table(score, request, Console.Out);
    if (parsed.GetValue(json) is { } file) await File.WriteAllTextAsync(file.FullName, ScorePrint.Json(score));
    return score.Pass ? 0 : 1;
});
var parsed = root.Parse(args.Length == 0 ? ["--help"] : args);
foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync($"{error.Message} See --help.");
return parsed.Errors.Count > 0 ? 2 : await parsed.InvokeAsync();
