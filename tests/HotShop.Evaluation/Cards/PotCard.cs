using HotShop.Monitor.Pot;
using HotShop.Simulator;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// The glass in the pot, asked every half hour of what had been logged by then, against what was in it. The service is not told what the pot
/// held at the start: until the first dip it knows nothing, and is not scored.
/// </summary>
static class PotCard
{
    static readonly Duration Step = Duration.FromMinutes(30);

    public static readonly Card Card = new("pot", "glass in the pot: is it inside the 95 % interval, and how wide is that?", UsualCount: 50, UsualDays: 5, Judge);

    sealed record Answer(double ErrorKilograms, bool IsInside, double HalfWidthShare);

    static async Task<IReadOnlyList<Measure>> Judge(Request request, TextWriter lines)
    {
        var all = new List<Answer>();
        var (ends, shares) = (new List<Answer>(), new List<double>());
        foreach (var seed in request.Seeds)
        {
            var answers = await Live(seed, request.Days);
            all.AddRange(answers);
            ends.Add(answers[^1]);
            shares.Add(answers.Average(a => a.IsInside ? 1.0 : 0));
            await lines.WriteLineAsync($"seed {seed}: inside {shares[^1]:P0} of {answers.Count} times, half-width {Sorted.Quantile(answers.Select(a => a.HalfWidthShare), 0.5):P1} of the full pot, at the end {ends[^1].ErrorKilograms:+0.0;-0.0} kg off");
        }
        return
        [
            Measure.AtLeast("inside the interval, share of all times", all.Average(a => a.IsInside ? 1.0 : 0), "1", 0.90),
            Measure.AtLeast("inside the interval at the end, share of the seeds", ends.Average(a => a.IsInside ? 1.0 : 0), "1", 0.90),
            Measure.AtMost("median half-width, share of the full pot", Sorted.Quantile(all.Select(a => a.HalfWidthShare), 0.5), "1", 0.12),
            Measure.Reported("median error", Sorted.Quantile(all.Select(a => Math.Abs(a.ErrorKilograms)), 0.5), "kg"),
            Measure.Reported("95th percentile of the error", Sorted.Quantile(all.Select(a => Math.Abs(a.ErrorKilograms)), 0.95), "kg"),
            Measure.Reported("share of times inside, of the worst seed", shares.Min(), "1"),
            Measure.Reported("times asked", all.Count, "1"),
        ];
    }

    static async Task<List<Answer>> Live(int seed, int days)
    {
        // The log alone tells of the glass: sparse sampling saves the time of readings that nobody looks at here.
        var studio = Days.Studio(seed, sampleSeconds: 3600);
        await using var service = ServiceUnderTest.Start(studio.Now, sampleSeconds: 3600);
        var pots = service.The<PotBook>();
        var answers = new List<Answer>();
        var end = studio.Now + Duration.FromDays(days);
        for (var at = studio.Now + Step; at <= end; at += Step)
        {
            await service.Live([.. studio.Advance(at).Where(m => m.Topic.EndsWith("/log", StringComparison.Ordinal))], at);
            var report = pots.At(Quillmere.Furnace, at)!;
            if (report.State.LastDipAt is null) continue;
            var truth = studio.Truth.GlassKilogramsAt(at)!.Value;
            answers.Add(new(report.State.MassKilograms - truth, truth >= report.State.MassKilogramsLow95 && truth <= report.State.MassKilogramsHigh95,
                report.State.HalfWidthKilograms / report.State.FullKilograms));
        }
        if (service.Errors > 0 || service.Counts.GetValueOrDefault("refused") > 0) throw new InvalidOperationException($"seed {seed}: the service refused log entries, or failed");
        return answers;
    }
}
