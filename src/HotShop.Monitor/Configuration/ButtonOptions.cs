using System.ComponentModel;
using System.Text.Json.Nodes;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Configuration;

public sealed record ButtonOptions
{
    [Description("Id: lower-case letters, digits, '-'.")]
    public required string Id { get; init; }

    [Description("Appliance the entry belongs to, e.g. furnace-1.")]
    public required string Appliance { get; init; }

    [Description("What a press logs: gather, or mode.")]
    public string Entry { get; init; } = "gather";

    [Description("Size of the gather, as in the pot's gatherKilograms.")]
    public string? Size { get; init; }

    [Description("Gathers a press stands for.")]
    public int Count { get; init; } = 1;

    [Description("Mode that a press sets, where entry is mode.")]
    public string? Mode { get; init; }

    [Description("Who presses it, where it is one person's.")]
    public string? Who { get; init; }

    [Description("Topic it publishes on; left out: PREFIX/SITE/APPLIANCE/ID.")]
    public string? Topic { get; init; }

    [Description("JSON Pointer (RFC 6901) to what was done, e.g. /action.")]
    public string? ValuePointer { get; init; }

    [Description("JSON Pointer to the time (RFC 3339) of the press.")]
    public string? TimePointer { get; init; }

    [Description("Values that mean a press, e.g. single. Left out: all but 0, off, false, open, up and release.")]
    public IReadOnlyList<string> Pressed { get; init; } = [];

    [Description("Presses closer together are one, in seconds, 0 to 60: contacts bounce.")]
    public double SettleSeconds { get; init; } = 1;

    internal JsonObject Fields() => Entry == "mode"
        ? new JsonObject { ["mode"] = Mode }
        : new JsonObject { ["size"] = Size, ["count"] = Count };

    internal string TopicIn(StudioConfiguration configuration) => Topic ?? $"{configuration.Broker.Prefix}/{configuration.Site}/{Appliance}/{Id}";

    internal ButtonPlan Plan(StudioConfiguration configuration) => new()
    {
        Id = Id, Appliance = Appliance, Topic = TopicIn(configuration), Entry = Entry, Fields = Fields(), Who = Who,
        ValuePointer = ValuePointer, TimePointer = TimePointer, Pressed = Pressed, Settle = Duration.FromSeconds(SettleSeconds),
    };
}
