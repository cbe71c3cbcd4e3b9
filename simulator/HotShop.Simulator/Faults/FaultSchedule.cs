namespace HotShop.Simulator.Faults;

/// <summary>The ordered faults, asked at every step.</summary>
internal sealed class FaultSchedule
{
    readonly (FaultKind Kind, string Appliance, double From, double To)[] spans;

    public FaultSchedule(IReadOnlyList<FaultOrder> orders)
    {
        foreach (var order in orders)
            if (order.Problem() is { } problem) throw new ArgumentException(problem, nameof(orders));
        spans = [.. orders.Select(o => (o.Kind, o.Appliance, o.After.TotalSeconds, (o.After + o.For).TotalSeconds))];
    }

    public bool IsEmpty => spans.Length == 0;

    public bool Has(FaultKind kind, string appliance, double elapsedSeconds) => HoursSinceStart(kind, appliance, elapsedSeconds) is not null;

    /// <summary>How long the fault has been there, in h; <see langword="null"/> when it is not.</summary>
    public double? HoursSinceStart(FaultKind kind, string appliance, double elapsedSeconds)
    {
        foreach (var (otherKind, otherAppliance, from, to) in spans)
            if (otherKind == kind && elapsedSeconds >= from && elapsedSeconds < to && otherAppliance == appliance)
                return (elapsedSeconds - from) / 3600;
        return null;
    }
}
