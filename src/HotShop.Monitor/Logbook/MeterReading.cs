using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>A meter's register as somebody read it.</summary>
/// <param name="Entry">Id of the entry in the logbook.</param>
/// <param name="Number">As it stands on the register, in <paramref name="Unit"/>.</param>
/// <param name="CanonicalPerUnit">m³, or kWh of an electric meter, in one <paramref name="Unit"/>.</param>
/// <param name="NewNumber">Where the meter was exchanged then: where the new one's register stood.</param>
public sealed record MeterReading(string Entry, Instant At, string? Who, double Number, string Unit, double CanonicalPerUnit, double? NewNumber)
{
    /// <summary>Smallest step of the register as it was typed: 48211 is read to 1, 48211.3 to 0.1; in its unit.</summary>
    public double Step
    {
        get
        {
            for (var digits = 0; digits < 3; digits++)
                if (Math.Abs(Number - Math.Round(Number, digits)) < 1e-9 * Math.Max(1, Number)) return Math.Pow(10, -digits);
            return 0.001;
        }
    }

    /// <summary>What passed from an earlier reading of the same meter to this one, in m³ or kWh.</summary>
    /// <returns>Null where the two cannot be of one register: it would have run backwards, or faster than it can.</returns>
    public double? GainSince(MeterReading before, ChannelPlan meter)
    {
        var start = before.NewNumber ?? before.Number;
        if (before.Unit != Unit && before.CanonicalPerUnit != CanonicalPerUnit)
            return Number * CanonicalPerUnit - start * before.CanonicalPerUnit is var gained and >= 0 ? gained : null;
        var traits = new MeterTraits(meter.CounterDigits, meter.CounterMaximumPerHour / CanonicalPerUnit, Duration.MaxValue);
        var gain = Number >= start ? Number - start : traits.GainAcrossRollover(start, Number, At - before.At);
        return gain is { } counted && traits.CanGain(counted, At - before.At) ? counted * CanonicalPerUnit : null;
    }

    /// <summary>The meter an entry speaks of: the one it names, or the appliance's only one of that kind.</summary>
    /// <returns>The meter, or what is missing and what to write; never both.</returns>
    public static (ChannelPlan? Meter, string? Problem) MeterOf(JsonObject fields, AppliancePlan appliance)
    {
        var quantity = Ucum.InCanonical(1, fields["unit"]!.GetValue<string>(), Dimension.Volume) is null ? Quantity.Energy : Quantity.GasVolume;
        var meters = appliance.Channels.Where(c => c.Quantity == quantity).ToList();
        if (fields["channel"]?.GetValue<string>() is { } named)
            return meters.FirstOrDefault(m => m.Name == named) is { } one ? (one, null)
                : (null, $"'{named}' is no meter of {appliance.Name} that counts in this unit{(meters.Count > 0 ? "; name one of " + string.Join(", ", meters.Select(m => m.Name)) : "")}");
        return meters.Count switch
        {
            1 => (meters[0], null),
            0 => (null, $"{appliance.Name} has no meter that counts in '{fields["unit"]}'; describe it among its channels: {{\"id\":\"meter\",\"quantity\":\"{quantity.NameOf()}\",\"reports\":\"typed\"}}"),
            _ => (null, $"{appliance.Name} has {meters.Count} such meters; add \"channel\": one of {string.Join(", ", meters.Select(m => m.Name))}"),
        };
    }

    /// <summary>An entry whose form has been checked.</summary>
    internal static MeterReading Of(string id, Instant at, string? who, JsonObject fields)
    {
        var unit = fields["unit"]!.GetValue<string>();
        var perUnit = Ucum.InCanonical(1, unit, Dimension.Volume) ?? Ucum.InCanonical(1, unit, Dimension.Energy) ?? throw new ArgumentException($"unchecked unit '{unit}'", nameof(fields));
        var isExchange = fields["exchange"]?.GetValue<bool>() == true;
        return new MeterReading(id, at, who, fields["reading"]!.GetValue<double>(), unit, perUnit, isExchange ? fields["newMeterReading"]?.GetValue<double>() ?? 0 : null);
    }
}
