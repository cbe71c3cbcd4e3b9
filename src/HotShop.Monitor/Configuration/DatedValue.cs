using System.ComponentModel;
using System.Text.Json;

namespace HotShop.Monitor.Configuration;

/// <summary>A value that held in a part of the past, whatever the file said then.</summary>
public sealed record DatedValue
{
    [Description("First day it held, in the studio's zone: YYYY-MM-DD. Left out: since ever.")]
    public string? From { get; init; }

    [Description("First day it held no more: YYYY-MM-DD. Left out: it holds today as well, and must then be what this file says elsewhere.")]
    public string? Until { get; init; }

    [Description("Which value: keys from the top of this file with dots between, and ids where lists are, e.g. gas.grossKilowattHoursPerCubicMetre or appliances.furnace-1.channels.crown.thermocouple.")]
    public required string Key { get; init; }

    [Description("The value, written as it would stand at its own place.")]
    public required JsonElement Value { get; init; }

    [Description("Why: a word for whoever wonders in a year, e.g. 'bill of January'.")]
    public string? Why { get; init; }
}
