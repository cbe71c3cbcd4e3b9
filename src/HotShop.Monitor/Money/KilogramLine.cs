using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Pot;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>
/// What the days' kilograms would have needed by the furnaces' own lines of the ninety days before them. A bare kWh/kg misleads: half the glass costs more a
/// kilogram in a furnace that is as good as ever.
/// </summary>
sealed class KilogramLine(StudioPlan plan, MeltingBook melting, StudioFormat format)
{
    /// <summary>Longer spans are no comparison with the days before them; each of their months has its own.</summary>
    const int MostDays = 62;

    /// <returns>Expected kWh/kg with its 95 % interval, or null; and what to make of it, or why it is not known.</returns>
    public (Interval? Expected, string Words) Expected(Instant from, Instant until, Instant now)
    {
        if ((until - from).TotalDays > MostDays) return (null, "told for single months");
        var furnaces = plan.Appliances.Where(a => a.Options.Pot is not null).ToList();
        var compared = furnaces.Select(f => melting.Compare(f, from, until, now)).ToList();
        if (compared.Contains(null)) return (null, $"not known: {Why(furnaces[compared.IndexOf(null)], from, until, now)}");
        var lines = compared.OfType<MeltingComparison>().Where(c => c.Kilograms > 0).ToList();
        var kilograms = lines.Sum(c => c.Kilograms);
        if (kilograms <= 0) return (null, "not known: no glass was charged on a whole day");
        var expected = StudioUse.Common(lines.Select(c => c.ExpectedKilowattHours));
        var saved = StudioUse.Common(lines.Select(c => c.SavedKilowattHours));
        var share = Math.Abs(saved.Value) / expected.Value;
        return (format.PerKilogramShown(new Estimate(expected.Value / kilograms, expected.StandardUncertainty / kilograms)),
            saved.Low95 <= 0 && saved.High95 >= 0 ? "no more and no less than can be told apart was burnt" : $"{format.Percent(share)} {(saved.Value > 0 ? "less" : "more")} was burnt");
    }

    string Why(AppliancePlan furnace, Instant from, Instant until, Instant now)
    {
        var before = melting.Of(furnace, from - Duration.FromDays(90), from, now);
        return before?.HoldingUnknown ?? before?.MeltingUnknown ?? before?.ThroughputUnknown ?? "the days hold no whole day, or the ninety before them make no line";
    }
}
