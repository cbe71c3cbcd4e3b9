using System.Collections.Concurrent;
using NodaTime;

namespace HotShop.Monitor.Health;

/// <summary>How a part of the service is: working, or in trouble with a sentence that says what and what to do.</summary>
/// <param name="IsSetUp">False: nothing is wrong with it, but nobody has set it up, so it does nothing.</param>
public sealed record PartHealth(string Part, bool IsWorking, string Detail, Instant Since, bool IsSetUp = true);

/// <summary>Where every folder reports how its part is. Alarms, readiness, the ping and the health page read it; it knows nobody.</summary>
public sealed class HealthBoard
{
    public const string Broker = "broker", Store = "store", Disk = "disk", Clock = "clock", Outbox = "outbox", Loop = "loop", Backup = "backup", Reports = "reports";

    readonly ConcurrentDictionary<string, PartHealth> parts = new();

    public IReadOnlyList<PartHealth> Parts => [.. parts.Values.OrderBy(p => p.Part, StringComparer.Ordinal)];

    public bool IsWorking(string part) => parts.TryGetValue(part, out var health) && health.IsWorking;

    public PartHealth? Of(string part) => parts.GetValueOrDefault(part);

    /// <summary>Since changes only when the part changes between working and trouble.</summary>
    public void Report(string part, bool isWorking, string detail, Instant now, bool isSetUp = true) =>
        parts.AddOrUpdate(part,
            _ => new PartHealth(part, isWorking, detail, now, isSetUp),
            (_, before) => before.IsWorking == isWorking ? before with { Detail = detail, IsSetUp = isSetUp } : new PartHealth(part, isWorking, detail, now, isSetUp));
}
