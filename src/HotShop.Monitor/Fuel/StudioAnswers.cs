using HotShop.Monitor.Configuration;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>The studio's use, or an appliance's part of it, in the form callers get.</summary>
sealed class StudioAnswers(StudioPlan plan, FuelBook fuel, StudioFuel studio, Instant now, bool isOwner)
{
    public IEnumerable<FuelAnswer> Of(Instant from, Instant to, FuelStep step) => studio.Use(from, to, step, now).Select(use =>
        Answer(use, use.Shares, use.Metered, use.Total, step) with { Parts = [.. use.Shares.Select(Part)] });

    public IEnumerable<FuelAnswer> Of(AppliancePlan appliance, Instant from, Instant to, FuelStep step) => studio.Use(from, to, step, now).Select(use =>
    {
        var own = use.Shares.Where(s => s.Appliance == appliance.Id).ToList();
        return Answer(use, own, Sum(own.Where(s => s.Origin != Origin.Estimated)), Sum(own), step) with
        {
            Origin = Name(own.Count == 0 ? Origin.Estimated : own.Max(s => s.Origin)),
            MeasuredShare = own.Count > 0 && own.All(s => s.Origin != Origin.Estimated) ? use.MeasuredShare : 0,
        };
    });

    /// <summary>Shares of one appliance: one of gas, one of electricity.</summary>
    static Estimate Sum(IEnumerable<FuelShare> shares) => shares.Aggregate(Estimate.Exact(0), (sum, s) => sum + s.KilowattHours);

    FuelAnswer Answer(StudioUse use, IReadOnlyList<FuelShare> shares, Estimate metered, Estimate total, FuelStep step)
    {
        var counted = metered.Value > total.Value ? total : metered;
        // What the whole is in doubt for beyond its metered part.
        var rest = Math.Sqrt(Math.Max(0, Math.Pow(total.StandardUncertainty, 2) - Math.Pow(counted.StandardUncertainty, 2)));
        var estimated = total.Value > counted.Value ? new Estimate(total.Value - counted.Value, rest) : Estimate.Exact(0);
        var (cost, costUncertainty) = isOwner ? Cost(use, shares, step) : (null, 0);
        // One kind of gas: what its shares are in doubt for is at most the same in all of them.
        var gas = StudioUse.Common(shares.Where(s => s.Kind == EnergyKind.Gas).Select(s => s.KilowattHours));
        if (shares.Count == use.Shares.Count) gas = gas with { StandardUncertainty = use.Gas.StandardUncertainty };
        return FuelAnswer.Of(
            use.From, use.To, counted, estimated, Volume(use, shares), cost, costUncertainty, plan.Configuration.Currency,
            gas * Estimate.Exact(fuel.GasAt(use.From).Fuel.CarbonDioxideKilogramsPerKilowattHour), total, use.MeasuredShare, use.Resets);
    }

    static Estimate Volume(StudioUse use, IReadOnlyList<FuelShare> shares) =>
        shares.Count == use.Shares.Count ? use.GasVolume : StudioUse.Common(shares.Select(s => s.BaseVolume));

    /// <summary>By the day's price; rounded once to the currency's hundredth. Null where a price is missing.</summary>
    (decimal? Cost, double Uncertainty) Cost(StudioUse use, IReadOnlyList<FuelShare> shares, FuelStep step)
    {
        var own = shares.Select(s => (s.Appliance, s.Kind)).ToHashSet();
        var days = step == FuelStep.Month ? studio.Use(use.From, use.To, FuelStep.Day, now) : [use];
        decimal? sum = 0m;
        var byKind = new Dictionary<EnergyKind, decimal>();
        foreach (var day in days)
            foreach (var share in day.Shares.Where(s => own.Contains((s.Appliance, s.Kind))))
            {
                var cost = fuel.Prices.CostOf(share.Kind, share.KilowattHours.Value, day.From.InZone(plan.Zone).Date);
                sum += cost;
                byKind[share.Kind] = byKind.GetValueOrDefault(share.Kind) + (cost ?? 0);
            }
        // At the mean price of what was used.
        var doubt = byKind.Select(k => (double)k.Value * Relative(use, shares, k.Key)).Aggregate(0.0, double.Hypot);
        return (sum is { } amount ? Math.Round(amount, 2, MidpointRounding.ToEven) : null, doubt);
    }

    static double Relative(StudioUse use, IReadOnlyList<FuelShare> shares, EnergyKind kind) => StudioUse.RelativeOf(shares.Count == use.Shares.Count
        ? kind == EnergyKind.Gas ? use.Gas : use.Electricity
        : StudioUse.Common(shares.Where(s => s.Kind == kind).Select(s => s.KilowattHours)));

    FuelPartAnswer Part(FuelShare share) => new(
        $"{plan.Site}/{share.Appliance}", share.Kind == EnergyKind.Gas ? "gas" : "electricity", Name(share.Origin),
        share.KilowattHours.Value, Math.Max(0, share.KilowattHours.Low95), share.KilowattHours.High95,
        share.BaseCubicMetres, Math.Max(0, share.BaseVolume.Low95), share.BaseVolume.High95);

    static string Name(Origin origin) => origin switch { Origin.Measured => "measured", Origin.Derived => "derived", _ => "estimated" };
}
