using System.CommandLine;
using HotShop.Mutation;

if (args is ["worker", var facts, var library]) return Worker.Run(Session.Load(facts, library), Console.In, Console.Out);

var count = new Option<int?>("--count") { Description = "A random part: so many numbers" };
var seed = new Option<int>("--seed") { Description = "Which random part", DefaultValueFactory = _ => 1 };
var only = new Option<string[]>("--only") { Description = "Numbers whose place begins so, such as Glass/ or Thermometry/its90.json; may be given more than once", DefaultValueFactory = _ => [] };
var json = new Option<FileInfo?>("--json") { Description = "File for the findings as JSON" };
var trust = new Option<FileInfo?>("--trust-red") { Description = "Findings of an earlier run: what was red then is not altered again" };
var document = new Option<bool>("--document") { Description = $"Write {MutationDocument.Path}; takes all numbers" };
count.Validators.Add(r => { if (r.GetValueOrDefault<int?>() is < 1) r.AddError("--count must be 1 or more."); });

var root = new RootCommand("Alters each number of the physics library by itself and shows which checks and tests notice.") { count, seed, only, json, trust, document };
root.Validators.Add(r => { if (r.GetValue(document) && (r.GetValue(count) is not null || r.GetValue(only)!.Length > 0)) r.AddError("--document takes all numbers: leave --count and --only away."); });
root.SetAction(parsed => MutationRun.Of(
    new(parsed.GetValue(count), parsed.GetValue(seed), parsed.GetValue(only)!, parsed.GetValue(json), parsed.GetValue(trust), parsed.GetValue(document)), Root(), Console.Out));
return await root.Parse(args).InvokeAsync();

static string Root()
{
    var folder = new DirectoryInfo(AppContext.BaseDirectory);
    while (!File.Exists(Path.Combine(folder.FullName, "HotShop.Monitor.sln"))) folder = folder.Parent ?? throw new InvalidOperationException("no solution above this program");
    return folder.FullName;
}
