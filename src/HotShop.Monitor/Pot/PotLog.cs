using System.Text.Json.Nodes;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Wire;
using HotShop.Physics.Pot;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>Turns log entries into what the estimator of the pot understands. Pure.</summary>
static class PotLog
{
    public static IReadOnlyList<PotEvent> Events(IEnumerable<LogEntry> entries, PotPlan pot) =>
        [.. entries.Select(e => Event(e, pot)).OfType<PotEvent>()];

    /// <returns>Null for entries that say nothing about the glass.</returns>
    static PotEvent? Event(LogEntry entry, PotPlan pot) => entry.Entry switch
    {
        "gather" => GatherOf(entry, pot),
        "tally" => TallyOf(entry, pot),
        "charge" => Charge(entry, pot),
        "dip" => Dip(entry, pot),
        "ladle-out" => new PotEvent.LadleOut(entry.At, Kilograms(entry.Fields)),
        "returned-glass" => new PotEvent.ReturnedGlass(entry.At, Kilograms(entry.Fields)),
        "pot-changed" => new PotEvent.PotChanged(entry.At),
        _ => null,
    };

    internal static PotEvent GatherOf(LogEntry entry, PotPlan pot)
    {
        var count = (int)(entry.Fields["count"]?.GetValue<double>() ?? 1);
        if (entry.Fields["massKg"] is { } mass) return new PotEvent.WeighedGather(entry.At, mass.GetValue<double>() * count);
        var size = entry.Fields["size"]!.GetValue<string>();
        return new PotEvent.Gather(entry.At, NominalKilograms(size, pot), count, size);
    }

    /// <summary>A size that has left the configuration still took glass: as much as the ones that are there, in the mean.</summary>
    static double NominalKilograms(string size, PotPlan pot) =>
        pot.Options.GatherKilograms.TryGetValue(size, out var kilograms) ? kilograms : pot.Options.GatherKilograms.Values.DefaultIfEmpty(0.4).Average();

    /// <returns>Null for what is no tally.</returns>
    internal static PotEvent.Tally? TallyOf(LogEntry entry, PotPlan pot)
    {
        if (entry.Entry != "tally") return null;
        var counts = ((JsonObject)entry.Fields["gathers"]!)
            .Select(g => new SizeCount(g.Key, NominalKilograms(g.Key, pot), (int)g.Value!.GetValue<double>())).ToList();
        var to = Time(entry.Fields, "to") ?? entry.At;
        // A tally without a beginning speaks for the twelve hours before it: a working day.
        return new PotEvent.Tally(Time(entry.Fields, "from") ?? to - Duration.FromHours(12), to, counts);
    }

    static PotEvent.Charge Charge(LogEntry entry, PotPlan pot)
    {
        var material = Material(entry, pot);
        return new PotEvent.Charge(entry.At, material.GlassKilograms(Kilograms(entry.Fields)), material.RelativeUncertainty);
    }

    /// <summary>What was charged, with the yield that holds for it: the entry's own, else the studio's, else the usual.</summary>
    internal static ChargeMaterial Material(LogEntry charge, PotPlan pot)
    {
        var material = ChargeMaterial.Named(charge.Fields["material"]!.GetValue<string>())!;
        return charge.Fields["yield"] is { } said ? material with { GlassYield = said.GetValue<double>() } : pot.Yielding(material);
    }

    static PotEvent.Dip Dip(LogEntry entry, PotPlan pot)
    {
        var unit = entry.Fields["unit"]!.GetValue<string>();
        if (entry.Fields["glassDepth"] is { } depth) return new PotEvent.Dip(entry.At, Metres(depth, unit));
        return new PotEvent.Dip(entry.At, Math.Max(0, pot.Glass.Geometry.HeightMetres - Metres(entry.Fields["rimToGlass"]!, unit)));
    }

    static double Metres(JsonNode value, string unit) => Ucum.InCanonical(value.GetValue<double>(), unit, Dimension.Length)!.Value / 100;

    /// <summary>Mass of an entry in kg, from <c>massKg</c> or <c>mass</c> with its unit.</summary>
    internal static double Kilograms(JsonObject fields) => fields["massKg"] is { } kilograms
        ? kilograms.GetValue<double>()
        : Ucum.InCanonical(fields["mass"]!.GetValue<double>(), fields["unit"]!.GetValue<string>(), Dimension.Mass)!.Value;

    static Instant? Time(JsonObject fields, string key) => fields[key] is { } node ? StrictTime.Parse(node.GetValue<string>()) : null;
}
