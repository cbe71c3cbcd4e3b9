using HotShop.Monitor.Configuration;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>The studio's use, or an appliance's part of it, in the form callers get.</summary>
sealed class StudioAnswers(StudioPlan plan, FuelBook fuel, StudioFuel studio, Instant now, bool isOwner)
{
    public IEnumerable<FuelAnswer> Of(Instant from, Instant to, FuelStep step) => studio.Use(from, to, step, now).Select(use =>
    {
        var metered = Math.Min(use.MeteredKilowattHours, use.Gas.Value + use.Electricity.Value);
        // One kind's meters know nothing of the other's.
        return Answer(use, use.Shares, metered, use.Gas + use.Electricity, step) with { Parts = [.. use.Shares.Select(Part)] };
    });

    public IEnumerable<FuelAnswer> Of(AppliancePlan appliance, Instant from, Instant to, FuelStep step) => studio.Use(from, to, step, now).Select(use =>
    {
        var own = use.Shares.Where(s => s.Appliance == appliance.Id).ToList();
        var metered = own.Where(s => s.Origin != Origin.Estimated).Sum(s => s.KilowattHours.Value);
        return Answer(use, own, metered, own.Aggregate(Estimate.Exact(0), (sum, s) => sum + s.KilowattHours), step) with
        {
            Origin = Name(own.Count == 0 ? Origin.Estimated : own.Max(s => s.Origin)),
            MeasuredShare = own.Count > 0 && own.All(s => s.Origin != Origin.Estimated) ? use.MeasuredShare : 0,
        };
    });

    FuelAnswer Answer(StudioUse use, IReadOnlyList<FuelShare> shares, double metered, Estimate total, FuelStep step) => new(
        use.From, use.To, metered, Math.Max(0, total.Value - metered), shares.Sum(s => s.BaseCubicMetres), isOwner ? Cost(use, shares, step) : null, plan.Configuration.Currency,
        shares.Where(s => s.Kind == EnergyKind.Gas).Sum(s => s.KilowattHours.Value) * fuel.GasAt(use.From).Fuel.CarbonDioxideKilogramsPerKilowattHour, use.MeasuredShare, use.Resets)
    {
        TotalKwh = total.Value, TotalKwhLow95 = total.Low95, TotalKwhHigh95 = total.High95,
    };

    /// <summary>By the day's price; rounded once to the currency's hundredth. Null where a price is missing.</summary>
    decimal? Cost(StudioUse use, IReadOnlyList<FuelShare> shares, FuelStep step)
    {
        var own = shares.Select(s => (s.Appliance, s.Kind)).ToHashSet();
        var days = step == FuelStep.Month ? studio.Use(use.From, use.To, FuelStep.Day, now) : [use];
        decimal? sum = 0m;
        foreach (var day in days)
            foreach (var share in day.Shares.Where(s => own.Contains((s.Appliance, s.Kind))))
                sum += fuel.Prices.CostOf(share.Kind, share.KilowattHours.Value, day.From.InZone(plan.Zone).Date);
        return sum is { } amount ? Math.Round(amount, 2, MidpointRounding.ToEven) : null;
    }

    FuelPartAnswer Part(FuelShare share) => new(
        $"{plan.Site}/{share.Appliance}", share.Kind == EnergyKind.Gas ? "gas" : "electricity", Name(share.Origin),
        share.KilowattHours.Value, Math.Max(0, share.KilowattHours.Low95), share.KilowattHours.High95, share.BaseCubicMetres);

    static string Name(Origin origin) => origin switch { Origin.Measured => "measured", Origin.Derived => "derived", _ => "estimated" };
}
