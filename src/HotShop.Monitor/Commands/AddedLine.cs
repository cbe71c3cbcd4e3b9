using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Commands;

/// <summary>How a channel that was added on the set-up page is listed.</summary>
static class AddedLine
{
    public static string Of(AddedChannel added, StudioPlan plan)
    {
        var said = $"Added on the set-up page: {added.Appliance}/{added.Channel.Id}, {added.Channel.Quantity}{(added.Channel.Topic is { } topic ? $", from '{topic}'" : "")}{(added.Channel.ValuePointer is { } pointer ? $" at {pointer}" : "")}";
        return AddedChannels.InForce(plan, added) ? $"{said}." : $"{said}: NOT in force, {ConfigurationFile.UsualName} says otherwise.";
    }
}
