using System.CommandLine;
using HotShop.Benchmarks;
using HotShop.Benchmarks.Live;

#pragma warning disable RS0030 // The entry point hands out the real clock; everybody else takes it.
var clock = TimeProvider.System;
#pragma warning restore RS0030

var hours = new Option<int>("--hours") { Description = "Simulated hours, 1 to 24", DefaultValueFactory = _ => 2 };
hours.Validators.Add(r => { if (r.GetValueOrDefault<int>() is < 1 or > 24) r.AddError("--hours must lie between 1 and 24."); });
var folder = new Option<DirectoryInfo>("--folder") { Description = "Where stores are made; on the disk to be measured", DefaultValueFactory = _ => new DirectoryInfo(Path.GetTempPath()) };

var bytes = new Command("bytes", "Bytes written per reading at 30 channels every 10 s") { hours, folder };
bytes.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own => BytesBenchmark.Run(own, parsed.GetValue(hours), Console.Out)));

var rawDays = new Option<int>("--raw-days") { Description = "Days of raw readings, 7 to 365", DefaultValueFactory = _ => 90 };
rawDays.Validators.Add(r => { if (r.GetValueOrDefault<int>() is < 7 or > 365) r.AddError("--raw-days must lie between 7 and 365."); });
var year = new Command("year", "Rows, bytes and times of questions of a year of 30 channels; takes a few GB and minutes") { rawDays, folder };
year.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own => YearBenchmark.Run(own, parsed.GetValue(rawDays), Console.Out)));

var replay = new Command("replay", "The past of such a year computed again by `hotshop replay`") { rawDays, folder };
replay.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own => ReplayBenchmark.Run(own, parsed.GetValue(rawDays), clock, Console.Out)));

var rows = new Option<int>("--rows") { Description = "Rows of the table, 1,000 to 10,000,000", DefaultValueFactory = _ => 1_000_000 };
rows.Validators.Add(r => { if (r.GetValueOrDefault<int>() is < 1_000 or > 10_000_000) r.AddError("--rows must lie between 1000 and 10000000."); });
var import = new Command("import", "A table of readings with bad rows, mended, and beside live readings, by `hotshop import`") { rows, folder };
import.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own => ImportBenchmark.Run(own, parsed.GetValue(rows), clock, Console.Out)));

var seconds = new Option<int>("--seconds") { Description = "Length of the measurement, 5 to 3600 s", DefaultValueFactory = _ => 70 };
seconds.Validators.Add(r => { if (r.GetValueOrDefault<int>() is < 5 or > 3600) r.AddError("--seconds must lie between 5 and 3600."); });
var slowDisk = new Option<int>("--slow-disk-ms") { Description = "Added to each fsync, 0 to 1000 ms; needs gcc", DefaultValueFactory = _ => 0 };
slowDisk.Validators.Add(r => { if (r.GetValueOrDefault<int>() is < 0 or > 1000) r.AddError("--slow-disk-ms must lie between 0 and 1000."); });
var alone = new Option<bool>("--alone") { Description = "Without readings, rollup and backup beside the alarm" };
var latency = new Command("latency", "From a published reading to the call at a phone, under load") { seconds, slowDisk, alone, folder };
latency.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own =>
    LatencyBenchmark.Run(own, parsed.GetValue(seconds), parsed.GetValue(slowDisk), !parsed.GetValue(alone), clock, Console.Out)));

var rateSeconds = new Option<int>("--seconds") { Description = "Length of each measurement, 1 to 600 s", DefaultValueFactory = _ => 10 };
var rate = new Command("rate", "Readings a second from MQTT QoS 1 to the durable row") { rateSeconds, folder };
rate.SetAction((parsed, _) => WithFolder.Run(parsed.GetValue(folder)!, own => RateBenchmark.Run(own, parsed.GetValue(rateSeconds), clock, Console.Out)));

var thermocouple = new Command("thermocouple", "Nanoseconds and bytes of a voltage turned into degrees, and of all that is derived of a reading");
thermocouple.SetAction((_, _) => ThermocoupleBenchmark.Run(Console.Out));

var root = new RootCommand("Measures the service on this machine. The figures that were measured are in docs/figures.md.") { bytes, year, replay, import, latency, rate, thermocouple };
var parsed = root.Parse(args.Length == 0 ? ["--help"] : args);
foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync($"{error.Message} See --help.");
return parsed.Errors.Count > 0 ? 2 : await parsed.InvokeAsync();
