using System.CommandLine;
using HotShop.Benchmarks;

var hours = new Option<int>("--hours") { Description = "Simulated hours, 1 to 24", DefaultValueFactory = _ => 2 };
hours.Validators.Add(r => { if (r.GetValueOrDefault<int>() is < 1 or > 24) r.AddError("--hours must lie between 1 and 24."); });
var folder = new Option<DirectoryInfo>("--folder") { Description = "Where stores are made; on the disk to be measured", DefaultValueFactory = _ => new DirectoryInfo(Path.GetTempPath()) };

var bytes = new Command("bytes", "Bytes written per reading at 30 channels every 10 s") { hours, folder };
bytes.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own => BytesBenchmark.Run(own, parsed.GetValue(hours), Console.Out)));

var root = new RootCommand("Measures the service on this machine. The figures that were measured are in docs/figures.md.") { bytes };
var parsed = root.Parse(args.Length == 0 ? ["--help"] : args);
foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync($"{error.Message} See --help.");
return parsed.Errors.Count > 0 ? 2 : await parsed.InvokeAsync();
