using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Fuel;

/// <summary>A meter at its place.</summary>
/// <param name="Parent">The meter right before it; null: none of ours.</param>
/// <param name="Appliances">What it serves.</param>
public sealed record MeterNode(ChannelPlan Channel, EnergyKind Kind, ChannelPlan? Parent, IReadOnlyList<AppliancePlan> Appliances, bool IsMain);

/// <summary>
/// Which meter lies behind which. All that passes a sub-meter has passed the meters before it: the two are compared, never added. Where an appliance has
/// a counter and a flow sensor on one pipe, the counter is the meter.
/// </summary>
public sealed class MeterTree
{
    public MeterTree(StudioPlan plan)
    {
        var meters = plan.Appliances.SelectMany(a => a.Channels).Where(c => KindOf(c.Quantity) is not null).ToList();
        var voices = meters.Where(m => !meters.Any(o => IsBetterVoice(o, m))).ToList();
        Nodes = [.. voices.Select(m => new MeterNode(m, KindOf(m.Quantity)!.Value, ParentOf(m, voices), Served(m, plan), m.Serves.Count == 0))];
    }

    public IReadOnlyList<MeterNode> Nodes { get; }

    public static EnergyKind? KindOf(Quantity quantity) => quantity switch
    {
        Quantity.GasVolume or Quantity.GasFlow => EnergyKind.Gas,
        Quantity.Energy or Quantity.Power => EnergyKind.Electricity,
        _ => null,
    };

    /// <summary>The studio's meter of a kind; null where none is described.</summary>
    public MeterNode? Main(EnergyKind kind) => Nodes.FirstOrDefault(n => n.Kind == kind && n.IsMain);

    /// <summary>The appliance's own meter of a kind: one that serves it alone.</summary>
    public MeterNode? Own(EnergyKind kind, string appliance) => Nodes.FirstOrDefault(n => n.Kind == kind && n.Channel.Serves.Count == 1 && n.Channel.Serves[0] == appliance);

    static IReadOnlyList<AppliancePlan> Served(ChannelPlan meter, StudioPlan plan) =>
        meter.Serves.Count == 0 ? plan.Appliances : [.. plan.Appliances.Where(a => meter.Serves.Contains(a.Id))];

    /// <summary>One that sends before one that is read, a counter before a flow or a power, of the same pipe.</summary>
    static bool IsBetterVoice(ChannelPlan other, ChannelPlan meter) =>
        !ReferenceEquals(other, meter) && KindOf(other.Quantity) == KindOf(meter.Quantity) && SameServed(other, meter) && other.Parent != meter.Id && meter.Parent != other.Id
        && (other.IsTyped, !other.Quantity.IsCumulative(), other.Id).CompareTo((meter.IsTyped, !meter.Quantity.IsCumulative(), meter.Id)) < 0;

    static bool SameServed(ChannelPlan a, ChannelPlan b) => a.Serves.Count == b.Serves.Count && a.Serves.All(b.Serves.Contains);

    static ChannelPlan? ParentOf(ChannelPlan meter, List<ChannelPlan> all) =>
        meter.Parent is { } named ? all.FirstOrDefault(m => m.Id == named)
        : all.Where(m => KindOf(m.Quantity) == KindOf(meter.Quantity) && Holds(m, meter)).OrderBy(m => m.Serves.Count == 0 ? int.MaxValue : m.Serves.Count).FirstOrDefault();

    /// <summary>Serves all that the other serves, and more.</summary>
    static bool Holds(ChannelPlan outer, ChannelPlan inner) =>
        inner.Serves.Count > 0 && (outer.Serves.Count == 0 || (outer.Serves.Count > inner.Serves.Count && inner.Serves.All(outer.Serves.Contains)));
}
