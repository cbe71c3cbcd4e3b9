using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>Days of an account with their parts, and what is missing in them.</summary>
sealed class AccountDays(StudioPlan plan, PriceList prices, StudioFormat format)
{
    /// <summary>Below this part of its time a day counts as not measured.</summary>
    internal const double MostlyUnmeasured = 0.5;

    public IReadOnlyList<AccountDay> Of(Spending spending, Instant now)
    {
        var charges = spending.Charges.ToLookup(c => c.Day);
        return [.. spending.Days.Select(d => Day(d, [.. charges[d.Day]], now))];
    }

    AccountDay Day(DayUse day, IReadOnlyList<DayCharge> charges, Instant now)
    {
        var parts = charges.SelectMany(c => c.Shares.Select((s, i) => Part(s, c.Amounts?[i]))).ToList();
        var hasNoPrice = charges.Any(c => c.Amounts is null && c.Shares.Any(s => s.KilowattHours > 0)) || charges.All(c => c.Amounts is null);
        return new AccountDay(
            day.Day, format.ShortDay(day.Day), day.Length.TotalHours, hasNoPrice ? null : format.Shown(charges.Sum(c => c.Total ?? 0), UncertaintyOf(day, charges)),
            format.Shown(charges.Sum(c => c.Standing)),
            format.EnergyShown(day.Gas + day.Electricity), format.PercentFigure(day.MeasuredShare), day.MeasuredShare < MostlyUnmeasured,
            plan.Zone.AtStartOfDay(day.Day.PlusDays(1)).ToInstant() > now, prices.All.Any(t => t.From == day.Day), day.Resets, parts);
    }

    /// <summary>A day's energies at the day's mean price.</summary>
    static decimal UncertaintyOf(DayUse day, IReadOnlyList<DayCharge> charges) => (decimal)charges
        .Select(c => Math.Abs((double)(c.Amounts?.Sum() ?? 0)) * StudioUse.RelativeOf(c.Kind == EnergyKind.Gas ? day.Gas : day.Electricity)).Aggregate(0.0, double.Hypot);

    AccountPart Part(DayShare share, decimal? amount) => new(
        share.Appliance, NameOf(share.Appliance), share.Kind, share.Origin, share.Purpose, share.Purpose.Words(),
        format.EnergyShown(Estimate.Relative(share.KilowattHours, share.EnergyRelative)),
        share.Kind == EnergyKind.Gas ? format.GasShown(Estimate.Relative(share.BaseCubicMetres, share.VolumeRelative)) : noGas,
        amount is { } whole ? format.Shown(whole, Math.Abs(whole) * (decimal)share.EnergyRelative) : null);

    static readonly Interval noGas = new(0, 0, 0, "", "");

    string NameOf(string appliance) => plan.Appliance(appliance)?.Name ?? appliance;

    /// <summary>Where it went: the days' parts added up, dearest first, and the standing charges.</summary>
    public IReadOnlyList<AccountWhere> Where(Spending spending)
    {
        var all = spending.Cost ?? 0;
        var energyRelative = StudioUse.RelativeOf(spending.Energy);
        var parts = spending.Charges.SelectMany(c => c.Shares.Select((s, i) => (Share: s, Amount: c.Amounts?[i])))
            .GroupBy(p => (p.Share.Appliance, p.Share.Purpose, p.Share.Kind, p.Share.Origin))
            .Select(g => Row(g.Key.Appliance, NameOf(g.Key.Appliance), g.Key.Purpose, g.Key.Kind, g.Key.Origin, g.Sum(p => p.Share.KilowattHours),
                g.Any(p => p.Amount is not null) ? g.Sum(p => p.Amount ?? 0) : null));
        var standing = spending.Charges.GroupBy(c => c.Kind).Select(g => (Kind: g.Key, Amount: g.Sum(c => c.Standing))).Where(s => s.Amount != 0)
            .Select(s => Row(null, "Standing charge", null, s.Kind, null, 0, s.Amount));
        return [.. parts.Where(p => p.EnergyKwh.Value > 0 || p.Amount?.Value != 0).OrderByDescending(p => p.Amount?.Value ?? 0).ThenByDescending(p => p.EnergyKwh.Value).ThenBy(p => p.Name, StringComparer.Ordinal).Concat(standing)];

        AccountWhere Row(string? appliance, string name, Purpose? purpose, EnergyKind kind, Origin? origin, double kilowattHours, decimal? amount)
        {
            // Standing charges are certain.
            var relative = appliance is null ? 0 : spending.RelativeOf(appliance, kind);
            return new(
                appliance, name, purpose, purpose?.Words() ?? (kind == EnergyKind.Gas ? "gas" : "electricity"), kind, origin, format.EnergyShown(Estimate.Relative(kilowattHours, relative)),
                amount is { } whole ? format.Shown(whole, Math.Abs(whole) * (decimal)relative) : null, ShareOf(amount ?? 0, relative));
        }

        // Of the part and of all the rest, as if they had nothing in common: a meter that both share makes it narrower.
        Interval ShareOf(decimal amount, double relative)
        {
            var share = all == 0 ? 0 : (double)(amount / all);
            return format.ShareShown(new Estimate(share, Math.Abs(share * (1 - share)) * double.Hypot(relative, energyRelative)));
        }
    }

    /// <summary>Days in a row of one kind that have use and no price.</summary>
    public IReadOnlyList<MissingPrice> Missing(Spending spending) =>
        [.. spending.Charges.Where(c => c.Amounts is null && c.Shares.Any(s => s.KilowattHours > 0)).GroupBy(c => c.Kind).SelectMany(kind =>
            Runs(kind.Select(c => c.Day)).Select(run => Missing(kind.Key, run, Estimate.Relative(kind.Where(c => c.Day >= run.First && c.Day <= run.Last).Sum(c => c.Shares.Sum(s => s.KilowattHours)), spending.RelativeOf(kind.Key)))))];

    MissingPrice Missing(EnergyKind kind, (LocalDate First, LocalDate Last) run, Estimate energy)
    {
        var word = kind == EnergyKind.Gas ? "gas" : "electricity";
        return new MissingPrice(kind, run.First, run.Last, format.EnergyShown(energy),
            $"no price of {word} for {Between(run.First, run.Last)}: {format.Energy(energy.Value)} are not in the cost; add a price list of {word} from {run.First:uuuu-MM-dd} or before under 'prices'");
    }

    public IReadOnlyList<DayRange> Unmeasured(Spending spending) =>
        [.. Runs(spending.Days.Where(d => d.MeasuredShare < MostlyUnmeasured).Select(d => d.Day))
            .Select(run => new DayRange(run.First, run.Last, Period.DaysBetween(run.First, run.Last) + 1, Between(run.First, run.Last)))];

    string Between(LocalDate first, LocalDate last) => first == last ? format.Day(first) : $"{format.Day(first)} to {format.Day(last)}";

    static IEnumerable<(LocalDate First, LocalDate Last)> Runs(IEnumerable<LocalDate> days)
    {
        (LocalDate First, LocalDate Last)? run = null;
        foreach (var day in days.OrderBy(d => d))
        {
            if (run is { } open && open.Last.PlusDays(1) == day) run = (open.First, day);
            else
            {
                if (run is { } done) yield return done;
                run = (day, day);
            }
        }
        if (run is { } last) yield return last;
    }
}
