using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Pot;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>What an hour, a day, a kilogram and a glory-hole hour cost, and the carbon dioxide.</summary>
sealed class AccountUnits(StudioPlan plan, PotBook pots, ModeHistory modes, KilogramLine line, SessionCosts sessions, StudioGas gas, StudioFormat format)
{
    public UnitCosts Costs(Spending spending, Instant from, Instant until, Instant now)
    {
        var rented = sessions.Of(spending, from, until);
        // A day that nobody measured cost something too: it must not make an hour cheap.
        var measured = spending.Days.Where(d => d.MeasuredShare >= AccountDays.MostlyUnmeasured).ToDictionary(d => d.Day);
        var hours = measured.Values.Sum(d => d.Length.TotalHours);
        var charges = spending.Charges.Where(c => measured.ContainsKey(c.Day)).ToList();
        var hourCharges = spending.UncertaintyOf(charges);
        decimal? cost = hours > 0 && charges.All(c => c.Amounts is not null || c.Shares.Count == 0) && charges.Any(c => c.Amounts is not null) ? charges.Sum(c => c.Total ?? 0) : null;
        return new UnitCosts(
            cost is { } whole ? Divided(whole, hourCharges, hours) : null, cost is { } all ? Divided(all, hourCharges, hours / 24) : null,
            PerKilogram(spending, from, until, now), PerGloryHoleHour(spending, from, until), rented, sessions.Persons(rented));
    }

    PerKilogram? PerKilogram(Spending spending, Instant from, Instant until, Instant now)
    {
        var melting = pots.Pots.Select(p => p.Appliance).ToHashSet();
        var glass = pots.Melted(melting, from, until).Estimate;
        if (glass.Value <= 0) return null;
        var energy = spending.Days.Sum(d => d.Shares.Where(s => melting.Contains(s.Appliance)).Sum(s => s.KilowattHours));
        var relative = spending.RelativeOf(melting);
        var perKilogram = Estimate.Relative(energy, relative) / glass;
        var (expected, words) = line.Expected(from, until, now);
        return new PerKilogram(format.GlassShown(glass), CostOf(spending, melting) is { } cost ? Divided(cost, Math.Abs(cost) * (decimal)double.Hypot(relative, glass.RelativeUncertainty), glass.Value) : null, format.PerKilogramShown(perKilogram), expected, words)
        {
            Efficiency = energy > 0 && pots.Heat(melting, from, until) is { } heat ? format.ShareShown(heat.ShareOf(glass, Estimate.Relative(energy, relative)).Estimate) : null,
        };
    }

    PerGloryHoleHour? PerGloryHoleHour(Spending spending, Instant from, Instant until)
    {
        var holes = plan.Appliances.Where(a => a.Kind == ApplianceKind.GloryHole).Select(a => a.Id).ToHashSet();
        var hours = holes.Sum(h => modes.Of(h, from, until).Where(s => s.Mode == Mode.Working).Sum(s => (s.To - s.From).TotalHours));
        if (hours < 0.1) return null;
        var energy = spending.Days.Sum(d => d.Shares.Where(s => holes.Contains(s.Appliance)).Sum(s => s.KilowattHours));
        var relative = spending.RelativeOf(holes);
        return new PerGloryHoleHour(
            new Figure(hours, format.Hours(hours)), CostOf(spending, holes) is { } cost ? Divided(cost, Math.Abs(cost) * (decimal)relative, hours) : null,
            format.EnergyShown(Estimate.Relative(energy / hours, relative)));
    }

    /// <summary>Of some appliances, without standing charges; null where a part of it has no price.</summary>
    static decimal? CostOf(Spending spending, HashSet<string> appliances)
    {
        decimal sum = 0;
        foreach (var charge in spending.Charges)
            for (var i = 0; i < charge.Shares.Count; i++)
            {
                if (!appliances.Contains(charge.Shares[i].Appliance)) continue;
                if (charge.Amounts is null && charge.Shares[i].KilowattHours > 0) return null;
                sum += charge.Amounts?[i] ?? 0;
            }
        return sum;
    }

    AmountInterval Divided(decimal amount, decimal standardUncertainty, double by) =>
        format.Shown(LargestRemainder.Round(amount / (decimal)by, format.Digits), standardUncertainty / (decimal)by);

    public CarbonDioxide CarbonDioxide(Spending spending)
    {
        var options = plan.Configuration;
        var burnt = spending.EnergyOf(EnergyKind.Gas);
        var gasSource = Source(EnergyKind.Gas, burnt, gas.Fuel.CarbonDioxideKilogramsPerKilowattHour, gas.CarbonDioxideSource, gas.CarbonDioxideYear);
        var taken = spending.EnergyOf(EnergyKind.Electricity);
        var electricSource = Source(EnergyKind.Electricity, taken, options.Electricity.CarbonDioxideKilogramsPerKilowattHour, options.Electricity.CarbonDioxideSource, options.Electricity.CarbonDioxideYear);
        var sum = Scaled(burnt, gasSource) + Scaled(taken, electricSource);
        return new CarbonDioxide(format.CarbonDioxideShown(sum), [gasSource, electricSource]);

        static Estimate Scaled(Estimate energy, CarbonDioxideSource source) => energy * Estimate.Exact(source.KilogramsPerKwh ?? 0);
    }

    CarbonDioxideSource Source(EnergyKind kind, Estimate energy, double? factor, string? source, int? year)
    {
        var kilograms = energy * Estimate.Exact(factor ?? 0);
        var word = kind == EnergyKind.Gas ? "gas" : "electricity";
        return new CarbonDioxideSource(kind, format.CarbonDioxideShown(kilograms), factor, source, year, factor is { } known
            ? $"{word}: {format.Number(known, 5)} kg/kWh ({source}, {year})"
            : $"{word} is left out: write its factor, source and year under 'electricity'");
    }
}
