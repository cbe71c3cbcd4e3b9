using HotShop.Monitor.Fuel;
using HotShop.Simulator;
using HotShop.Simulator.Truth;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// Energy of each hour against what was really burnt. The service knows the bill's calorific value and the usual state of the gas;
/// the real ones, the meters' errors and the annealers' real power are hidden.
/// </summary>
/// <remarks>
/// The hidden errors stand still within a seed, so its hours are right or wrong together: many seeds of one day tell more than few of many, and the
/// target for the share of hours is 0.85, not the nominal 0.95, because forty seeds are forty draws (two of forty outside are expected; seven or more
/// come by chance once in three hundred times).
/// </remarks>
static class FuelCard
{
    const int SampleSeconds = 10;
    static readonly string[] EnergyChannels = ["/gas-flow", "/relay", "/power", "/meter"];

    public static readonly Card Card = new("fuel", "energy of each hour: is it inside the 95 % interval, and how far off?", UsualCount: 40, UsualDays: 1, Judge);

    /// <param name="IsMeasured">By a meter or sensor; else from a nameplate.</param>
    sealed record Hour(string Appliance, bool IsMeasured, double Estimated, double Low, double High, double Truth, double MeasuredShare)
    {
        public bool IsInside => Truth >= Low && Truth <= High;
    }

    static async Task<IReadOnlyList<Measure>> Judge(Request request, TextWriter lines)
    {
        var all = new List<Hour>();
        var totals = new List<(string Appliance, double RelativeError)>();
        foreach (var seed in request.Seeds)
        {
            var hours = await Live(seed, request.Days);
            all.AddRange(hours);
            var own = hours.GroupBy(h => h.Appliance).Select(g => (Appliance: g.Key, Error: g.Sum(h => h.Estimated) / g.Sum(h => h.Truth) - 1)).ToList();
            totals.AddRange(own);
            await lines.WriteLineAsync($"seed {seed}: " + string.Join(", ", own.Select(o => $"{o.Appliance} {o.Error:+0.0%;-0.0%}")) + " off in total");
        }
        var gas = all.Where(h => h.Appliance is Quillmere.Furnace or Quillmere.GloryHole).ToList();
        var gasTotals = totals.Where(t => t.Appliance is Quillmere.Furnace or Quillmere.GloryHole).Select(t => Math.Abs(t.RelativeError)).ToList();
        return
        [
            Measure.AtLeast("gas: hours inside the interval, share", Inside(gas), "1", 0.85),
            Measure.AtMost("gas: error of the total, worst of all seeds", gasTotals.Max(), "1", 0.05),
            Measure.Reported("gas: error of the total, median", Sorted.Quantile(gasTotals, 0.5), "1"),
            Measure.Reported("gas: half-width of an hour of the furnace, share of it", Sorted.Quantile(gas.Where(h => h.Appliance == Quillmere.Furnace).Select(h => (h.High - h.Low) / 2 / h.Estimated), 0.5), "1"),
            Measure.AtLeast("metered annealer: hours inside, share", Inside(all.Where(h => h.Appliance == Quillmere.SecondAnnealer)), "1", 0.90),
            Measure.AtLeast("annealer by nameplate: hours inside, share", Inside(all.Where(h => h.Appliance == Quillmere.FirstAnnealer)), "1", 0.90),
            Measure.AtLeast("measured share of the hours, least", all.Where(h => h.IsMeasured).Min(h => h.MeasuredShare), "1", 0.999),
            Measure.Reported("hours compared", all.Count, "1"),
        ];
    }

    static double Inside(IEnumerable<Hour> hours) => hours.Average(h => h.IsInside ? 1.0 : 0);

    static async Task<List<Hour>> Live(int seed, int days)
    {
        var studio = Days.Studio(seed, SampleSeconds);
        await using var service = ServiceUnderTest.Start(studio.Now, SampleSeconds);
        var (start, end) = (studio.Now, studio.Now + Duration.FromDays(days));
        // Five minutes more, so that the last hour is closed like all others.
        for (var at = start + Duration.FromSeconds(SampleSeconds); at <= end + Duration.FromMinutes(5); at += Duration.FromSeconds(SampleSeconds))
            await service.Live([.. studio.Advance(at).Where(IsOfEnergy)], at);
        var answers = service.Plan.Appliances.Where(a => a.Id != Quillmere.Shop)
            .SelectMany(a => service.The<FuelBook>().Use(a, start, end, FuelStep.Hour, end).Select(use => (Appliance: a.Id, Use: use))).ToList();
        if (service.Errors > 0) throw new InvalidOperationException($"seed {seed}: the service failed");

        var truth = studio.Truth.Hours.ToDictionary(h => h.From);
        // An hour that burnt nothing says nothing about a meter's error. The first hour begins before the first sample.
        return [.. answers.Where(a => a.Use.From > start).Select(a => Compare(a.Appliance, a.Use, truth[a.Use.From])).Where(h => h.Truth > 0.01)];
    }

    /// <summary>Temperatures and the like cost time and change no energy.</summary>
    static bool IsOfEnergy(DeviceMessage message) => EnergyChannels.Any(c => message.Topic.EndsWith(c, StringComparison.Ordinal));

    static Hour Compare(string appliance, FuelUse use, TruthHour truth)
    {
        var burnt = appliance switch
        {
            Quillmere.Furnace => truth.Furnace.Kilowatthours,
            Quillmere.GloryHole => truth.GloryHole.Kilowatthours,
            Quillmere.FirstAnnealer => truth.FirstAnnealerKilowatthours,
            _ => truth.SecondAnnealerKilowatthours,
        };
        return new Hour(appliance, use.EstimatedKilowattHours == 0, use.Total.Value, use.Total.Low95, use.Total.High95, burnt, use.MeasuredShare);
    }
}
