using System.Globalization;
using System.Text.Json;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using HotShop.Simulator;
using HotShop.Simulator.Faults;
using HotShop.Simulator.Truth;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// A calendar month from meters that people read: energy and cost of the studio and of each fire against what was really burnt; once with the main meter
/// alone, once with a meter of its own at each fire. The month's edges fall between two readings, and March has an hour less.
/// </summary>
static class TypedCard
{
    const int SampleSeconds = 600;
    static readonly LocalDate first = new(2026, 3, 1), last = new(2026, 3, 31);

    public static readonly Card Card = new("typed", "a month from meters read twice a week: is it inside the 95 % interval?", UsualCount: 100, UsualDays: 38, Judge);

    sealed record Figure(string Of, double Value, double Low, double High, double Truth)
    {
        public bool IsInside => Truth >= Low && Truth <= High;

        public double HalfWidthShare => (High - Low) / 2 / Truth;
    }

    sealed record Seed(IReadOnlyList<Figure> Alone, IReadOnlyList<Figure> Metered);

    static async Task<IReadOnlyList<Measure>> Judge(Request request, TextWriter lines)
    {
        var seeds = new List<Seed>();
        if (request.Days != Card.UsualDays) await lines.WriteLineAsync($"The question is always the calendar month of March: {Card.UsualDays} days are simulated, not {request.Days}.");
        foreach (var seed in request.Seeds)
        {
            seeds.Add(await Live(seed));
            await lines.WriteLineAsync($"seed {seed}: " + string.Join("; ", seeds[^1].Alone.Select(Text)) + "; with sub-meters " + string.Join("; ", seeds[^1].Metered.Skip(2).Select(Text)));
        }
        return
        [
            Inside("studio's energy", s => s.Alone, "studio"), Inside("studio's cost", s => s.Alone, "cost"),
            Inside("furnace", s => s.Alone, Quillmere.Furnace), Inside("glory hole", s => s.Alone, Quillmere.GloryHole),
            Inside("with sub-meters: studio's energy", s => s.Metered, "studio"), Inside("with sub-meters: studio's cost", s => s.Metered, "cost"),
            Inside("with sub-meters: furnace", s => s.Metered, Quillmere.Furnace), Inside("with sub-meters: glory hole", s => s.Metered, Quillmere.GloryHole),
            Measure.AtLeast("furnace: interval without over with a meter of its own, median", Narrower(seeds, Quillmere.Furnace), "1", 3),
            Measure.AtLeast("glory hole: interval without over with a meter of its own, median", Narrower(seeds, Quillmere.GloryHole), "1", 3),
            Measure.Reported("studio: half-width, median share of it", Width(seeds, s => s.Alone, "studio"), "1"),
            Measure.Reported("furnace: half-width, median share of it", Width(seeds, s => s.Alone, Quillmere.Furnace), "1"),
            Measure.Reported("glory hole: half-width, median share of it", Width(seeds, s => s.Alone, Quillmere.GloryHole), "1"),
            Measure.Reported("furnace: error, median", Sorted.Quantile(seeds.Select(s => One(s.Alone, Quillmere.Furnace)).Select(f => Math.Abs(f.Value / f.Truth - 1)), 0.5), "1"),
            Measure.Reported("glory hole: error, median", Sorted.Quantile(seeds.Select(s => One(s.Alone, Quillmere.GloryHole)).Select(f => Math.Abs(f.Value / f.Truth - 1)), 0.5), "1"),
        ];

        Measure Inside(string name, Func<Seed, IReadOnlyList<Figure>> which, string of) =>
            Measure.AtLeast($"{name}: inside the interval, share of the seeds", seeds.Average(s => One(which(s), of).IsInside ? 1.0 : 0), "1", 0.90);
    }

    static Figure One(IReadOnlyList<Figure> figures, string of) => figures.First(f => f.Of == of);

    static double Width(List<Seed> seeds, Func<Seed, IReadOnlyList<Figure>> which, string of) => Sorted.Quantile(seeds.Select(s => One(which(s), of).HalfWidthShare), 0.5);

    static double Narrower(List<Seed> seeds, string of) => Sorted.Quantile(seeds.Select(s => One(s.Alone, of).HalfWidthShare / One(s.Metered, of).HalfWidthShare), 0.5);

    static string Text(Figure f) => string.Create(CultureInfo.InvariantCulture, $"{f.Of} {f.Value / f.Truth - 1:+0.0%;-0.0%} in ±{f.HalfWidthShare:0.0%}{(f.IsInside ? "" : " OUTSIDE")}");

    static async Task<Seed> Live(int seed)
    {
        var start = new LocalDate(2026, 2, 24).PlusDays((seed % 5 + 5) % 5).At(new LocalTime(8, 0)).InZoneLeniently(Days.Zone).ToInstant();
        var studio = new SimulatedStudio(new SimulationOptions { Seed = seed, Start = start, Zone = Days.Zone, SampleSeconds = SampleSeconds, Faults = (IReadOnlyList<FaultOrder>)[] });
        await using var alone = ServiceUnderTest.Start(start, SampleSeconds, c => TypedStudio.Configuration(c, hasSubMeters: false));
        await using var metered = ServiceUnderTest.Start(start, SampleSeconds, c => TypedStudio.Configuration(c, hasSubMeters: true));
        var end = Days.Zone.AtStartOfDay(last.PlusDays(5)).ToInstant();
        foreach (var at in TypedStudio.Times(seed, start, end, Days.Zone).Append(end))
        {
            var sent = studio.Advance(at);
            var modes = sent.Where(m => m.Topic.EndsWith("/log", StringComparison.Ordinal) && !m.Topic.Contains("annealer", StringComparison.Ordinal) && m.Payload.Contains("\"mode\"", StringComparison.Ordinal)).ToList();
            var register = sent.Last(m => m.Topic.EndsWith("/shop/meter", StringComparison.Ordinal));
            var main = TypedStudio.Reading(TypedStudio.MainMeter, Math.Floor(JsonDocument.Parse(register.Payload).RootElement.GetProperty("value").GetDouble()), register.At);
            await alone.Live([.. modes, main], at);
            await metered.Live(
            [
                .. modes, main,
                TypedStudio.Reading(TypedStudio.FirstMeter, TypedStudio.SubMeter(studio.Truth.FurnaceFuel, studio.Truth, studio.Truth.Parameters.FurnaceFlowFactor), at),
                TypedStudio.Reading(TypedStudio.SecondMeter, TypedStudio.SubMeter(studio.Truth.GloryHoleFuel, studio.Truth, studio.Truth.Parameters.GloryHoleFlowFactor), at),
            ], at);
        }
        // The answers first; only then the truth is looked at.
        var (answers, meteredAnswers) = (Answers(alone, end), Answers(metered, end));
        if (alone.Errors + metered.Errors > 0 || alone.Counts.GetValueOrDefault("refused") + metered.Counts.GetValueOrDefault("refused") > 0)
            throw new InvalidOperationException($"seed {seed}: the service refused entries, or failed");
        var truth = Truth(studio.Truth);
        return new Seed([.. answers.Select(a => a with { Truth = truth(a.Of) })], [.. meteredAnswers.Select(a => a with { Truth = truth(a.Of) })]);
    }

    static List<Figure> Answers(ServiceUnderTest service, Instant now)
    {
        var month = service.The<StudioFuel>().Use(Days.Zone.AtStartOfDay(first).ToInstant(), Days.Zone.AtStartOfDay(last.PlusDays(1)).ToInstant(), FuelStep.Month, now).Single();
        var cost = service.The<AccountBook>().Of(first, last, now).Cost!;
        return
        [
            new("studio", month.Gas.Value, month.Gas.Low95, month.Gas.High95, 0), new("cost", (double)cost.Value, (double)cost.Low95, (double)cost.High95, 0),
            .. month.Shares.Where(s => s.Appliance != Quillmere.Shop).Select(s => new Figure(s.Appliance, s.KilowattHours.Value, s.KilowattHours.Low95, s.KilowattHours.High95, 0)),
        ];
    }

    /// <summary>Price of the demo's list: what the service is told, not what is hidden.</summary>
    const double PerKilowattHour = 0.11;

    static Func<string, double> Truth(HiddenTruth hidden)
    {
        var (from, to) = (Days.Zone.AtStartOfDay(first).ToInstant(), Days.Zone.AtStartOfDay(last.PlusDays(1)).ToInstant());
        var hours = hidden.Hours.Where(h => h.From >= from && h.From < to).ToList();
        var (furnace, glory) = (hours.Sum(h => h.Furnace.Kilowatthours), hours.Sum(h => h.GloryHole.Kilowatthours));
        return of => of switch
        {
            Quillmere.Furnace => furnace,
            Quillmere.GloryHole => glory,
            "cost" => (furnace + glory) * PerKilowattHour,
            _ => furnace + glory,
        };
    }
}
