using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Simulator.People;

/// <summary>The tablet at the benches: entries with an id of their own, sent a little after the fact.</summary>
internal sealed class Logbook(int seed, DateTimeZone zone)
{
    public const string Device = "dev-bench";

    /// <summary>Who signs for the shop as a whole.</summary>
    public const string Tablet = "tablet";

    readonly PriorityQueue<(string Topic, string Payload), (Instant Due, long Number)> waiting = new();
    LocalDate numberedDate;
    int numberOfDay;
    long numberOfAll;

    /// <summary>Notes an entry; it leaves the tablet at <paramref name="sentAt"/>.</summary>
    public void Write(
        string appliance, Instant at, Instant sentAt, string entry, string who, params ReadOnlySpan<(string Name, JsonNode Value)> fields)
    {
        var json = new JsonObject { ["entry"] = entry, ["id"] = NextId(at) };
        foreach (var (name, value) in fields) json[name] = value;
        json["who"] = who;
        json["time"] = InstantPattern.ExtendedIso.Format(at);
        waiting.Enqueue(($"hotshop/{Quillmere.Site}/{appliance}/log", json.ToJsonString(JsonSerializerOptions.Default)), (sentAt, numberOfAll++));
    }

    /// <summary>Entries that leave by now.</summary>
    public IEnumerable<(string Topic, string Payload)> Due(Instant now)
    {
        while (waiting.TryPeek(out var entry, out var order) && order.Due <= now)
        {
            waiting.Dequeue();
            yield return entry;
        }
    }

    string NextId(Instant at)
    {
        var date = at.InZone(zone).Date;
        if (date != numberedDate) (numberedDate, numberOfDay) = (date, 0);
        return string.Create(CultureInfo.InvariantCulture, $"tablet-{seed}-{date:yyyyMMdd}-{++numberOfDay:000}");
    }
}
