using HotShop.Monitor.Annealing;
using HotShop.Simulator;
using HotShop.Simulator.Plant;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// When an annealer can be opened, asked every half hour while it is on its way down, against the moment its chamber really came to 50 °C. The couple's offset, the
/// losses of the chamber, its load and the room's temperature are hidden. Each load's curve is typed when it starts, as a technician would.
/// </summary>
static class AnnealingCard
{
    const int SampleSeconds = 60;
    const double TargetCelsius = 50;
    static readonly Duration Step = Duration.FromMinutes(1);

    public static readonly Card Card = new("annealing", "when an annealer can be opened: is the real moment inside the 95 % interval, and how wide is that?", UsualCount: 40, UsualDays: 5, Judge);

    /// <param name="IsTail">The heat was off when it was asked.</param>
    sealed record Answer(string Appliance, Instant AskedAt, bool IsTail, ExpectedMoment Expected, int Earlier)
    {
        public Instant? Truth { get; set; }

        public bool IsInside => Truth >= Expected.Earliest95 && Truth <= Expected.Latest95;

        public double ErrorMinutes => Math.Abs((Expected.At - Truth!.Value).TotalMinutes);

        public double HalfWidthMinutes => (Expected.Latest95 - Expected.Earliest95).TotalMinutes / 2;
    }

    static async Task<IReadOnlyList<Measure>> Judge(Request request, TextWriter lines)
    {
        var all = new List<Answer>();
        foreach (var seed in request.Seeds)
        {
            var answers = (await Live(seed, request.Days)).Where(a => a.Truth is not null).ToList();
            all.AddRange(answers);
            await lines.WriteLineAsync($"seed {seed}: {answers.Count} answers, inside {answers.Average(a => a.IsInside ? 1.0 : 0):P0}, median half-width {Sorted.Quantile(answers.Select(a => a.HalfWidthMinutes), 0.5):0} min");
        }
        var (tail, curve) = (all.Where(a => a.IsTail).ToList(), all.Where(a => !a.IsTail).ToList());
        return
        [
            Measure.AtLeast("heat off: inside the interval, share of answers", Inside(tail), "1", 0.90),
            Measure.AtLeast("on the curve: inside the interval, share of answers", Inside(curve), "1", 0.90),
            Measure.AtMost("heat off: median error", Sorted.Quantile(tail.Select(a => a.ErrorMinutes), 0.5), "min", 15),
            Measure.AtMost("on the curve: median error", Sorted.Quantile(curve.Select(a => a.ErrorMinutes), 0.5), "min", 30),
            Measure.Reported("heat off: median half-width", Sorted.Quantile(tail.Select(a => a.HalfWidthMinutes), 0.5), "min"),
            Measure.Reported("on the curve: median half-width", Sorted.Quantile(curve.Select(a => a.HalfWidthMinutes), 0.5), "min"),
            Measure.Reported("heat off: answers", tail.Count, "1"),
            Measure.Reported("on the curve: answers", curve.Count, "1"),
        ];
    }

    static double Inside(List<Answer> answers) => answers.Count == 0 ? 0 : answers.Average(a => a.IsInside ? 1.0 : 0);

    static async Task<List<Answer>> Live(int seed, int days)
    {
        var studio = Days.Studio(seed, SampleSeconds);
        await using var service = ServiceUnderTest.Start(studio.Now, SampleSeconds);
        var (openings, loads) = (service.The<OpeningBook>(), service.The<LoadBook>());
        string[] annealers = [Quillmere.FirstAnnealer, Quillmere.SecondAnnealer];
        var modes = annealers.ToDictionary(a => a, studio.ModeOf);
        var (given, open) = (new List<Answer>(), new List<Answer>());
        var start = studio.Now;
        for (var at = start + Step; at <= start + Duration.FromDays(days); at += Step)
        {
            await service.Live([.. studio.Advance(at).Where(m => m.Topic.Contains("/annealer-", StringComparison.Ordinal))], at);
            foreach (var annealer in annealers)
            {
                var celsius = annealer == Quillmere.FirstAnnealer ? studio.Truth.FirstAnnealerCelsius : studio.Truth.SecondAnnealerCelsius;
                if (celsius <= TargetCelsius)
                {
                    foreach (var answer in open.Where(a => a.Appliance == annealer)) answer.Truth = at;
                    open.RemoveAll(a => a.Appliance == annealer);
                }
                if (studio.ModeOf(annealer) is var mode && mode != modes[annealer] && mode == "cool-down") await Type(loads, annealer, at);
                // Heated again before it was down: nothing to compare with.
                if (mode is "heat-up" or "working") open.RemoveAll(a => a.Appliance == annealer);
                modes[annealer] = mode;
            }
            if ((at - start).TotalMinutes % 30 != 0) continue;
            foreach (var opening in openings.All(at))
            {
                if (opening is not { Expected: { } expected, Phase: CoolingPhase.Cooling or CoolingPhase.OnCurve }) continue;
                var answer = new Answer(opening.Appliance, at, opening.Phase == CoolingPhase.Cooling, expected, opening.EarlierCoolings);
                given.Add(answer);
                open.Add(answer);
            }
        }
        if (service.Errors > 0) throw new InvalidOperationException($"seed {seed}: the service failed");
        return given;
    }

    /// <summary>The technician types what the controller was told: the weekend's curve on Saturday for the second annealer.</summary>
    static async Task Type(LoadBook loads, string annealer, Instant at)
    {
        var isWeekend = annealer == Quillmere.SecondAnnealer && at.InZone(Days.Zone).DayOfWeek == IsoDayOfWeek.Saturday;
        var programme = isWeekend ? AnnealingProgramme.OverTheWeekend : AnnealingProgramme.Overnight;
        List<StageText> stages = [.. programme.Stages.Select(s => s.KelvinPerHour is { } rate ? new StageText(s.TargetCelsius, rate) : new StageText(HoldMinutes: s.HoldHours * 60))];
        var curve = new HotShop.Physics.Annealing.AnnealingCurve(at, programme.StartCelsius, [.. stages.Select(s => s.Stage())]);
        await loads.Add(new AnnealerLoad($"{annealer}-{at.ToUnixTimeSeconds()}", annealer, programme.Name, curve, stages), default);
    }
}
