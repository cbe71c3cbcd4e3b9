namespace HotShop.Monitor.Configuration;

/// <summary>Whether the meters make a tree: each appliance's energy passes one meter after the other, and none is counted twice.</summary>
static class MeterCheck
{
    /// <param name="Serves">Null: the whole studio.</param>
    sealed record Meter(string Where, string Id, string Quantity, string? Parent, IReadOnlySet<string>? Serves)
    {
        public bool IsGas => Quantity is "gas-volume" or "gas-flow";

        /// <summary>Whether all that passes the other passes this one too.</summary>
        public bool Holds(Meter other) => Serves is null || (other.Serves is { } inner && inner.IsSubsetOf(Serves));

        public bool Meets(Meter other) => Serves is null || other.Serves is null || Serves.Overlaps(other.Serves);
    }

    static readonly string[] metering = ["gas-volume", "gas-flow", "energy", "power"];

    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var ids = configuration.Appliances.Select(a => a.Id).ToHashSet(StringComparer.Ordinal);
        var meters = new List<Meter>();
        for (var i = 0; i < configuration.Appliances.Count; i++)
            for (var j = 0; j < configuration.Appliances[i].Channels.Count; j++)
                if (Of(found, configuration.Appliances[i], configuration.Appliances[i].Channels[j], $"appliances[{i}].channels[{j}]", ids) is { } meter) meters.Add(meter);
        Mains(found, meters);
        Overlaps(found, meters);
        Parents(found, meters);
    }

    static Meter? Of(ProblemList found, ApplianceOptions appliance, ChannelOptions channel, string where, HashSet<string> ids)
    {
        if (!metering.Contains(channel.Quantity))
        {
            if (channel.Serves.Count > 0) found.Add($"{where}.serves", $"{channel.Quantity} meters nothing", $"only a meter serves appliances: {string.Join(", ", metering)}");
            if (channel.Class is not null) found.Add($"{where}.class", $"{channel.Quantity} meters nothing", $"only a meter has an accuracy class here: {string.Join(", ", metering)}");
            if (channel.Parent is not null) found.Add($"{where}.parent", $"{channel.Quantity} meters nothing", $"only a meter lies behind another: {string.Join(", ", metering)}");
            return null;
        }
        foreach (var served in channel.Serves.Where(s => !ids.Contains(s)))
            found.Add($"{where}.serves", $"there is no appliance '{served}'", "name the appliances' ids");
        var serves = channel.Serves.Count > 0 ? channel.Serves.ToHashSet(StringComparer.Ordinal) : appliance.Kind == "shop" ? null : new HashSet<string>(StringComparer.Ordinal) { appliance.Id };
        return new Meter(where, $"{appliance.Id}/{channel.Id}", channel.Quantity, channel.Parent, serves);
    }

    /// <summary>A counter and a flow of one pipe are two voices of one meter; two counters of the whole studio would be counted twice.</summary>
    static void Mains(ProblemList found, List<Meter> meters)
    {
        foreach (var group in meters.Where(m => m.Serves is null).GroupBy(m => m.Quantity).Where(g => g.Count() > 1))
            found.Add(group.Last().Where, $"{string.Join(" and ", group.Select(m => m.Id))} would both be the main meter of {(group.Last().IsGas ? "gas" : "electricity")}",
                "let all but one say what they serve, e.g. \"serves\": [\"furnace-1\", \"glory-hole-1\"]");
    }

    static void Overlaps(ProblemList found, List<Meter> meters)
    {
        for (var i = 0; i < meters.Count; i++)
            for (var j = 0; j < i; j++)
                if (meters[i].IsGas == meters[j].IsGas && meters[i].Meets(meters[j]) && !meters[i].Holds(meters[j]) && !meters[j].Holds(meters[i]))
                    found.Add($"{meters[i].Where}.serves", $"{meters[i].Id} and {meters[j].Id} each serve something of the other's and something else",
                        "one of two meters lies behind the other, or they share nothing: correct what they serve");
    }

    static void Parents(ProblemList found, List<Meter> meters)
    {
        var byId = meters.GroupBy(m => m.Id).ToDictionary(g => g.Key, g => g.First());
        foreach (var meter in meters.Where(m => m.Parent is not null))
        {
            var where = $"{meter.Where}.parent";
            if (!byId.TryGetValue(meter.Parent!, out var parent)) found.Add(where, $"there is no meter '{meter.Parent}'", "name one as APPLIANCE/CHANNEL");
            else if (parent.IsGas != meter.IsGas) found.Add(where, $"{parent.Id} meters {(parent.IsGas ? "gas" : "electricity")}, this one {(meter.IsGas ? "gas" : "electricity")}", "name a meter of the same kind");
            else if (IsInCircle(meter, byId)) found.Add(where, $"{meter.Id} would lie behind itself", "follow the pipe from the utility's meter: each lies behind the one before it");
            else if (!parent.Holds(meter)) found.Add(where, $"{parent.Id} does not serve all that {meter.Id} serves", "correct what they serve: all that passes a meter has passed those before it");
        }
    }

    static bool IsInCircle(Meter meter, Dictionary<string, Meter> byId)
    {
        var at = meter;
        for (var steps = 0; steps <= byId.Count; steps++)
        {
            if (at.Parent is null || !byId.TryGetValue(at.Parent, out var next)) return false;
            if (next.Id == meter.Id) return true;
            at = next;
        }
        return true;
    }
}
