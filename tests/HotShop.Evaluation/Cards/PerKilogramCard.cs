using HotShop.Monitor.Pot;
using HotShop.Physics.Melting;
using HotShop.Physics.Statistics;
using HotShop.Simulator;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// Holding power and melting energy per kilogram against a furnace that nobody charged. The truth of holding is a twin of the plant's furnace, held at the same
/// working and idle temperatures with its door shut; of melting, what the real one burnt more, over the glass that really melted; both over the very days that the service
/// counted. The service is told none of it, nor losses, heating value, meter's and scale's errors, forgotten gathers.
/// </summary>
static class PerKilogramCard
{
    const int SampleSeconds = 60;
    static readonly string[] Needed = [$"{Quillmere.Furnace}/gas-flow", $"{Quillmere.Furnace}/setpoint", "/log"];

    public static readonly Card Card = new("per-kilogram", "holding power and melting energy: are they inside their 95 % intervals?", UsualCount: 100, UsualDays: 40, Judge);

    sealed record Figure(Estimate Answer, double Truth)
    {
        public bool IsInside => Truth >= Answer.Low95 && Truth <= Answer.High95;
        public double Error => Answer.Value / Truth - 1;
        public double HalfWidth => (Answer.High95 - Answer.Low95) / 2 / Answer.Value;
    }

    /// <param name="ConstantOfDays">What a line of daily energy over kilograms would have said of holding.</param>
    sealed record Outcome(Figure Holding, Figure Melting, double ConstantOfDays, double SlopeOfDays);

    static async Task<IReadOnlyList<Measure>> Judge(Request request, TextWriter lines)
    {
        var all = new List<Outcome>();
        foreach (var seed in request.Seeds)
        {
            var outcome = await Live(seed, request.Days);
            all.Add(outcome);
            await lines.WriteLineAsync($"seed {seed}: holding {Text(outcome.Holding, "kW")}; melting {Text(outcome.Melting, "kWh/kg")}");
        }
        return
        [
            .. Measures("holding power", [.. all.Select(o => o.Holding)]),
            .. Measures("melting energy", [.. all.Select(o => o.Melting)]),
            Measure.Reported("holding as a plain line over days has it, mean error", all.Average(o => o.ConstantOfDays / o.Holding.Truth - 1), "1"),
            Measure.Reported("melting as a plain line over days has it, mean error", all.Average(o => o.SlopeOfDays / o.Melting.Truth - 1), "1"),
        ];
    }

    static IEnumerable<Measure> Measures(string name, IReadOnlyList<Figure> figures)
    {
        var inside = figures.Average(f => f.IsInside ? 1.0 : 0);
        yield return Measure.AtLeast($"{name}: truth inside the interval, share of the seeds", inside, "1", 0.90);
        // An interval that always holds the truth is too wide. Fewer than fifty seeds cannot tell.
        yield return figures.Count >= 50 ? Measure.AtMost($"{name}: the same, not too often", inside, "1", 0.98) : Measure.Reported($"{name}: the same, not too often", inside, "1");
        yield return Measure.Reported($"{name}: half-width, median, share of it", Sorted.Quantile(figures.Select(f => f.HalfWidth), 0.5), "1");
        yield return Measure.Reported($"{name}: error, mean", figures.Average(f => f.Error), "1");
        yield return Measure.Reported($"{name}: error, largest", figures.Max(f => Math.Abs(f.Error)), "1");
    }

    static string Text(Figure figure, string unit) => FormattableString.Invariant(
        $"{figure.Answer.Value:0.00} ({figure.Answer.Low95:0.00} to {figure.Answer.High95:0.00}), truly {figure.Truth:0.00} {unit}{(figure.IsInside ? "" : ", OUTSIDE")}");

    static async Task<Outcome> Live(int seed, int days)
    {
        var start = Days.StartOf(seed);
        var studio = new SimulatedStudio(new SimulationOptions { Seed = seed, Start = start, Zone = Days.Zone, SampleSeconds = SampleSeconds, WithHoldingTwin = true });
        await using var service = ServiceUnderTest.Start(start, SampleSeconds);
        var end = start + Duration.FromDays(days);
        for (var at = start + Duration.FromMinutes(10); at <= end + Duration.FromMinutes(10); at += Duration.FromMinutes(10))
            await service.Live([.. studio.Advance(at).Where(m => Needed.Any(n => m.Topic.EndsWith(n, StringComparison.Ordinal)))], at);
        var report = service.The<MeltingBook>().Of(service.Plan.Appliance(Quillmere.Furnace)!, start, end, end)!;
        if (service.Errors > 0 || service.Counts.GetValueOrDefault("refused") > 0) throw new InvalidOperationException($"seed {seed}: the service refused entries, or failed");
        if (report.Line is not { } line) throw new InvalidOperationException($"seed {seed}: no figure: {report.HoldingUnknown ?? report.MeltingUnknown}");

        var counted = line.Days.Select(d => new Interval(d.From, d.To)).ToList();
        var truth = studio.Truth.Hours.Where(h => counted.Exists(d => d.Contains(h.From))).ToList();
        var held = truth.Sum(h => h.HoldingKilowatthours!.Value);
        var plain = LinearFit.Line([.. line.Days.Select(d => d.ChargedKilograms)], [.. line.Days.Select(d => d.KilowattHours)])!;
        return new Outcome(new(line.Holding, held / truth.Count), new(line.Melting, (truth.Sum(h => h.Furnace.Kilowatthours) - held) / truth.Sum(h => h.MeltedKilograms)),
            plain.Coefficients[0] / 24, plain.Coefficients[1]);
    }
}
