using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel.Spreading;

/// <summary>The fires of a studio that no sensor measures, with what is known of their hours.</summary>
/// <param name="began">Before this, nobody said what the studio did.</param>
sealed class FireList(IReadingHistory history, ModeHistory modes, Instant? began, Instant from, Instant to)
{
    /// <summary>Nothing is believed of it but that it is no power station's.</summary>
    static readonly Estimate Blank = new(0, 300);

    /// <summary>By a relay or valve and its nameplate; else by its nameplate and its modes; nothing where neither is known.</summary>
    public IReadOnlyList<Fire> Of(AppliancePlan appliance, EnergyKind kind)
    {
        if (FuelSource.Of(appliance).FirstOrDefault(s => s.Kind == kind && !s.IsMeasured) is { } switched)
            return [new Fire(appliance.Id, Estimate.Relative(switched.Channel.NameplateKilowatts!.Value, FuelDoubt.Nameplate.StandardUncertainty), OnTime(switched), Wander.OnTime)];
        return IsByMode(appliance, kind) ? [.. ByMode(appliance)] : [];
    }

    /// <summary>Whether its use is estimated from nameplate and modes.</summary>
    public static bool IsByMode(AppliancePlan appliance, EnergyKind kind) =>
        appliance.Kind != ApplianceKind.Shop && appliance.Options.NameplateKilowatts is not null && EnergyOf(appliance) == kind
        && FuelSource.Of(appliance).All(s => s.Kind != kind);

    public static EnergyKind EnergyOf(AppliancePlan appliance) => appliance.Options.Energy switch
    {
        "gas" => EnergyKind.Gas,
        "electricity" => EnergyKind.Electricity,
        _ => appliance.Kind is ApplianceKind.Furnace or ApplianceKind.GloryHole or ApplianceKind.Shop ? EnergyKind.Gas : EnergyKind.Electricity,
    };

    /// <summary>What the shop itself uses of a main meter: heating with a nameplate; else what is left.</summary>
    /// <param name="isShared">Whether fires that are only estimated lie behind the same meter.</param>
    /// <returns>Null where all of the meter belongs to the appliances.</returns>
    public Fire? OfShop(AppliancePlan shop, EnergyKind kind, bool isShared)
    {
        if (shop.Options.NameplateKilowatts is { } plate && EnergyOf(shop) == kind)
            return new Fire(shop.Id, new Estimate(0.2 * plate, 0.15 * plate), SinceBegin, Wander.Unknown);
        if (!isShared) return Evenly(shop.Id);
        // Lamps, fans and the compressor of a small shop (common practice). Of gas, nothing but the fires that are described.
        return kind == EnergyKind.Electricity ? new Fire(shop.Id, new Estimate(3, 3), SinceBegin, Wander.Unknown) : null;
    }

    /// <summary>Behind a meter of its own that people read, with nothing known of its hours.</summary>
    public Fire Evenly(string appliance) => new(appliance, Blank, SinceBegin, Wander.Unknown);

    double SinceBegin(Instant start, Instant end) =>
        began is { } first && Instant.Max(first, start) is var since && since < end ? (end - since).TotalHours : 0;

    IEnumerable<Fire> ByMode(AppliancePlan appliance)
    {
        var stretches = modes.Of(appliance.Id, from, to);
        foreach (var mode in stretches.Select(s => s.Mode).Distinct())
        {
            var share = FireShare.Of(appliance.Kind, mode);
            if (share.Value == 0) continue;
            var own = stretches.Where(s => s.Mode == mode).ToList();
            var plate = appliance.Options.NameplateKilowatts!.Value;
            yield return new Fire(appliance.Id, new Estimate(share.Value * plate, share.StandardUncertainty * plate), (start, end) => Hours(own, start, end), Wander.Mode);
        }
    }

    double Hours(List<ModeStretch> stretches, Instant start, Instant end)
    {
        if (began is not { } first) return 0;
        start = Instant.Max(start, first);
        int low = 0, high = stretches.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (stretches[middle].To <= start) low = middle + 1;
            else high = middle;
        }
        var sum = 0.0;
        for (var i = low; i < stretches.Count && stretches[i].From < end; i++)
            sum += Math.Max(0, (Instant.Min(end, stretches[i].To) - Instant.Max(start, stretches[i].From)).TotalHours);
        return sum;
    }

    /// <summary>Hours on, from the relay's or valve's hour rows; an hour that is cut, in proportion.</summary>
    Func<Instant, Instant, double> OnTime(FuelSource switched)
    {
        var rows = history.Hours(switched.Channel, from - Duration.FromHours(1), to);
        return (start, end) => rows.Touching(start, end).Sum(row =>
            row.Amount * Math.Max(0, (Instant.Min(end, row.Hour + Duration.FromHours(1)) - Instant.Max(start, row.Hour)).TotalHours));
    }
}
