using System.Text.RegularExpressions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Wiring;

/// <summary>What a value on a topic most likely is: a guess for a person to confirm, from the words around it, its unit and its size.</summary>
/// <param name="Unit">UCUM; null: the quantity's own.</param>
/// <param name="Appliance">Id; null where nothing in the topic tells.</param>
sealed partial record ChannelProposal(Quantity Quantity, string? Unit, string? Appliance, string Channel, string Why)
{
    sealed record Hint(string[] Words, Quantity Quantity, bool IsState = false);

    // In order: the first that fits. Words as they stand in topics and keys, in lower case.
    static readonly Hint[] hints =
    [
        new(["setpoint", "target", "sp"], Quantity.Setpoint),
        new(["flame", "fire"], Quantity.Flame, true), new(["valve", "solenoid"], Quantity.Valve, true), new(["door", "contact", "lid"], Quantity.Door, true),
        new(["relay", "contactor", "switch", "output", "element"], Quantity.Relay, true), new(["blower", "fan"], Quantity.BlowerProven, true),
        new(["lockout", "lock", "fault"], Quantity.LockOut, true), new(["mains"], Quantity.Mains, true),
        new(["co", "monoxide"], Quantity.CarbonMonoxide), new(["lel", "methane", "combustible"], Quantity.CombustibleGas), new(["o2", "oxygen"], Quantity.Oxygen),
        new(["temp", "temperature", "celsius", "fahrenheit", "tempc", "tempf", "couple", "thermocouple", "crown", "chamber", "pyrometer"], Quantity.Temperature),
        new(["flow"], Quantity.GasFlow), new(["energy", "kwh", "wh", "total"], Quantity.Energy), new(["power", "watt", "watts", "kw", "apower"], Quantity.Power),
        new(["volume", "meter", "gas", "m3", "pulse", "pulses", "counter"], Quantity.GasVolume),
        new(["pressure", "pa", "mbar", "psi"], Quantity.Pressure), new(["weight", "mass", "kg", "scale"], Quantity.Mass),
    ];

    // Said of the device, not of the studio.
    static readonly string[] ofTheDevice = ["battery", "linkquality", "rssi", "snr", "uptime", "id", "seq", "sequence", "version", "humidity", "lqi", "heap", "voltage", "current", "co2"];

    // Formulas and units whole; else runs of one kind, so that "furnace2" and "tempC" come apart.
    [GeneratedRegex("(?i:co2|o2|m3)(?![A-Za-z])|[A-Z]?[a-z]+|[A-Z]+|[0-9]+")]
    private static partial Regex Word();

    /// <summary>Null where the value is a time, or nothing tells what it is.</summary>
    public static ChannelProposal? Of(string topic, PayloadValue value, StudioPlan plan)
    {
        if (value.Number is null && !value.IsState) return null;
        var near = Words(value.Pointer ?? topic[(topic.LastIndexOf('/') + 1)..]);
        var far = Words(topic);
        if (near.Any(ofTheDevice.Contains)) return null;
        if (WhatItIs(value, near, far) is not var (quantity, unit, why)) return null;
        var appliance = ApplianceOf(topic, far, quantity, value.Number, plan);
        return new(quantity, unit, appliance?.Id, FreeName(quantity, topic, value, appliance), why);
    }

    static (Quantity Quantity, string? Unit, string Why)? WhatItIs(PayloadValue value, IReadOnlyList<string> near, IReadOnlyList<string> far)
    {
        foreach (var words in new[] { near, far })
            foreach (var hint in hints)
                if (words.FirstOrDefault(hint.Words.Contains) is { } word && (hint.IsState ? value.IsState : value.Number is not null))
                    return (hint.Quantity, UnitOf(hint.Quantity, value, near), $"it is called '{Shown.Short(word)}'");
        if (value.Unit is { } unit && Enum.GetValues<Quantity>().Where(q => !q.IsState() && Ucum.ProblemWith(unit, q) is null).Select(q => (Quantity?)q).FirstOrDefault() is { } measured)
            return (measured, UnitOf(measured, value, near), $"its unit is {Shown.Short(unit)}");
        return value switch
        {
            // Common practice: furnaces and glory holes work from 900 to 1,300 °C, annealers soak near 480 °C.
            { Number: >= 700 and <= 1450 } => (Quantity.Temperature, null, "a furnace or a glory hole is about so hot in °C"),
            { Number: > 1450 and <= 2640 } => (Quantity.Temperature, "[degF]", "a furnace or a glory hole is about so hot in °F"),
            { Number: >= 300 and < 700 } => (Quantity.Temperature, null, "an annealer is about so hot in °C"),
            { IsState: true } => (Quantity.Relay, null, "it is on or off"),
            _ => null,
        };
    }

    static string? UnitOf(Quantity quantity, PayloadValue value, IReadOnlyList<string> near)
    {
        // Our own object says its unit itself, in each message.
        if (value.Unit is { } said && Ucum.ProblemWith(said, quantity) is null) return value.Pointer is null ? null : said;
        return quantity switch
        {
            Quantity.Temperature or Quantity.Setpoint when near.Any(w => w is "fahrenheit" or "f" or "tempf") || value.Number is > 1450 and <= 2640 => "[degF]",
            Quantity.Power when near.Any(w => w is "watt" or "watts" or "w" or "apower") || value.Number > 200 => "W",
            Quantity.Energy when near.Any(w => w is "wh") => "W.h",
            Quantity.GasVolume when near.Any(w => w is "pulse" or "pulses") => "{pulse}",
            _ => null,
        };
    }

    static AppliancePlan? ApplianceOf(string topic, IReadOnlyList<string> words, Quantity quantity, double? number, StudioPlan plan)
    {
        if (plan.Appliances.FirstOrDefault(a => topic.Split('/').Contains(a.Id)) is { } exact) return exact;
        // 'glory' of 'glory-hole-1', and 'hole' with it, say more than one word alone; 'furnace2' names the second. A number alone names nothing.
        var named = plan.Appliances.Select(a => (Appliance: a, Shared: Words(a.Id + " " + a.Name).Distinct().Where(words.Contains).ToList()))
            .Where(a => a.Shared.Any(w => !char.IsAsciiDigit(w[0]))).OrderByDescending(a => a.Shared.Count).FirstOrDefault();
        if (named.Appliance is not null) return named.Appliance;
        if (quantity is Quantity.Temperature && number is >= 700) return Only(plan, ApplianceKind.Furnace);
        if (quantity is Quantity.Temperature && number is >= 300) return Only(plan, ApplianceKind.Annealer);
        return quantity is Quantity.GasVolume or Quantity.Mains or Quantity.CarbonMonoxide or Quantity.CombustibleGas ? Only(plan, ApplianceKind.Shop) : null;
    }

    static AppliancePlan? Only(StudioPlan plan, ApplianceKind kind) => plan.Appliances.Where(a => a.Kind == kind).Take(2).ToList() is [var one] ? one : null;

    /// <summary>An id for the channel that its appliance does not have yet: from the pointer, else the topic's end, else the quantity.</summary>
    static string FreeName(Quantity quantity, string topic, PayloadValue value, AppliancePlan? appliance)
    {
        var taken = (appliance?.Channels.Select(c => c.Name) ?? []).Append("log").ToHashSet(StringComparer.Ordinal);
        var ending = Id((value.Pointer ?? topic).Split('/')[^1]);
        var wanted = new[] { ending, quantity.NameOf() }.FirstOrDefault(n => n.Length > 1 && n is not ("value" or "state") && !char.IsAsciiDigit(n[0]) && !taken.Contains(n)) ?? quantity.NameOf();
        return Enumerable.Range(2, 1000).Select(n => $"{wanted}-{n}").Prepend(wanted).First(n => !taken.Contains(n));
    }

    static string Id(string text) => string.Join('-', Words(text)) is { Length: > 40 } longer ? longer[..40].TrimEnd('-') : string.Join('-', Words(text));

    static List<string> Words(string text) => [.. Word().Matches(text).Select(m => m.Value.ToLowerInvariant())];
}
