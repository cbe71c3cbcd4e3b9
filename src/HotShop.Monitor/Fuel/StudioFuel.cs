using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>The whole studio's use, nothing counted twice: a meter of the shop is the main meter, and what the others leave of it is the shop's.</summary>
public sealed class StudioFuel(StudioPlan plan, FuelBook fuel)
{
    /// <summary>Use in [from, to) by hour, day or month of the studio's zone; stretches at the ends are cut to the question.</summary>
    public IReadOnlyList<StudioUse> Use(Instant from, Instant to, FuelStep step, Instant now)
    {
        var lines = plan.Appliances.SelectMany(a => FuelSource.Of(a).Select(s => (Appliance: a, Source: s, Uses: fuel.Use(a, from, to, step, now, s.Kind)))).ToList();
        if (lines.Count == 0) return [];
        return [.. Enumerable.Range(0, lines[0].Uses.Count).Select(i => At(i))];

        StudioUse At(int index)
        {
            var one = lines.Select(l => (l.Appliance, l.Source, Use: l.Uses[index])).ToList();
            var shares = one.Where(l => l.Appliance.Kind != ApplianceKind.Shop)
                .Select(l => new FuelShare(l.Appliance.Id, l.Source.Kind, l.Source.IsMeasured ? Origin.Measured : Origin.Estimated, l.Use.Total, l.Use.BaseCubicMetres, l.Use.BaseCubicMetres / fuel.Gas.ToBase(1))).ToList();
            foreach (var (shop, source, use) in one.Where(l => l.Appliance.Kind == ApplianceKind.Shop))
            {
                var rest = use.Total.Value - shares.Where(s => s.Kind == source.Kind).Sum(s => s.KilowattHours.Value);
                var cubicMetres = Math.Max(0, use.BaseCubicMetres - shares.Where(s => s.Kind == source.Kind).Sum(s => s.BaseCubicMetres));
                shares.Add(new FuelShare(shop.Id, source.Kind, Origin.Derived, new Estimate(Math.Max(0, rest), use.Total.StandardUncertainty), cubicMetres, cubicMetres / fuel.Gas.ToBase(1)));
            }
            var uses = one[0].Use;
            return new StudioUse(uses.From, uses.To, shares, Sum(EnergyKind.Gas), Sum(EnergyKind.Electricity),
                one.Where(l => l.Source.IsMeasured).Select(l => l.Use.MeasuredShare).DefaultIfEmpty(0).Average(), one.Sum(l => l.Use.Resets));

            Estimate Sum(EnergyKind kind) => shares.Where(s => s.Kind == kind).Aggregate(Estimate.Exact(0), (sum, s) => sum + s.KilowattHours);
        }
    }
}
