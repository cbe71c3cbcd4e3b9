using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>A channel with its place in the memory.</summary>
internal sealed record Input(int Index, ChannelPlan Plan);

/// <summary>What a rule may look at: the memory, at one moment.</summary>
internal readonly struct Situation(StudioMemory memory, Instant at)
{
    public Instant At { get; } = at;
    public Instant StartedAt => memory.StartedAt;

    public ChannelMemory Channel(Input input) => memory.Channels[input.Index];

    /// <summary>The last value while it still stands for now: no older than the longest gap of its channel.</summary>
    public double? Fresh(Input? input)
    {
        if (input is null) return null;
        var channel = memory.Channels[input.Index];
        return channel.At is { } then && At - then <= input.Plan.LongestGap ? channel.Value : null;
    }

    public bool? IsOn(Input? input) => Fresh(input) is { } value ? value >= 0.5 : null;

    /// <summary>Holding until somebody says otherwise: the mode in which alarms are most awake.</summary>
    public Mode ModeOf(string appliance) => memory.Modes.TryGetValue(appliance, out var mode) ? mode.Mode : Mode.Holding;

    /// <summary>Intended temperature of a typed load, °C; null where none is under way.</summary>
    public double? CurveCelsius(string appliance) => memory.Curves.TryGetValue(appliance, out var curve) ? curve.SetpointCelsius(At) : null;

    public PartHealth? Part(string name) => memory.Parts.GetValueOrDefault(name);
}
