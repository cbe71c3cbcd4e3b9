using System.CommandLine;
using HotShop.Simulator.Commands;

#pragma warning disable RS0030 // The entry point hands out the real clock.
var wall = TimeProvider.System;
#pragma warning restore RS0030

var root = new RootCommand("Quillmere Hot Shop, an invented glass studio that obeys the laws of heat and speaks MQTT.")
{
    SimulateCommand.Create(wall),
    SummaryCommand.Create(wall),
};
var parsed = root.Parse(args);
if (parsed.Errors.Count == 0) return await parsed.InvokeAsync();
foreach (var error in parsed.Errors) await Console.Error.WriteLineAsync($"{error.Message} See --help.");
return 2;
