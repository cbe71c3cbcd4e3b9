using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Configuration;

public enum ApplianceKind { Furnace, GloryHole, Annealer, PickUpOven, Shop }

/// <summary>An appliance with its channels resolved.</summary>
public sealed record AppliancePlan(string Id, string Name, ApplianceKind Kind, ApplianceOptions Options, IReadOnlyList<ChannelPlan> Channels)
{
    public ChannelPlan? Channel(Quantity quantity) => Channels.FirstOrDefault(c => c.Quantity == quantity);
}

/// <summary>The configuration in force, checked and resolved: what every folder works from.</summary>
public sealed record StudioPlan(
    StudioConfiguration Configuration, DateTimeZone Zone, IReadOnlyList<AppliancePlan> Appliances, ChannelDirectory Channels, string DataDirectory)
{
    public string Site => Configuration.Site;

    public AppliancePlan? Appliance(string id) => Appliances.FirstOrDefault(a => a.Id == id);

    /// <summary>A path from the configuration file, absolute. Secrets and certificates lie beside the file.</summary>
    public required string BaseDirectory { get; init; }
}
