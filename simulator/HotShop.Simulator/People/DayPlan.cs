using HotShop.Simulator.Chance;
using HotShop.Simulator.Plant;
using NodaTime;

namespace HotShop.Simulator.People;

/// <summary>
/// What the crew means to do on one local day: Tuesday to Saturday 8:00 to 18:00 at work, then charging; the furnace is held on
/// Sunday and Monday.
/// </summary>
internal sealed class DayPlan
{
    public const int ChargeLoads = 6;

    readonly LocalDate date;
    readonly DateTimeZone zone;
    readonly HiddenParameters hidden;
    readonly Draws draws;
    readonly List<CrewAct> acts = [];

    DayPlan(LocalDate date, DateTimeZone zone, HiddenParameters hidden, int seed)
    {
        (this.date, this.zone, this.hidden) = (date, zone, hidden);
        draws = new Draws(seed, "day plan", DayNumber(date));
        if (!IsWorkingDay(date))
        {
            acts.Add(new SetMode(At(0), Quillmere.Furnace, "holding"));
            return;
        }

        Morning();
        for (var bench = 1; bench <= 3; bench++) Bench(bench);
        Evening();
    }

    /// <summary>The acts in time order; some lie in the small hours of the next day.</summary>
    public static IReadOnlyList<CrewAct> For(LocalDate date, DateTimeZone zone, HiddenParameters hidden, int seed) =>
        [.. new DayPlan(date, zone, hidden, seed).acts.OrderBy(a => a.At)];

    public static bool IsWorkingDay(LocalDate date) => date.DayOfWeek is not (IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday);

    static long DayNumber(LocalDate date) => Period.DaysBetween(new LocalDate(2020, 1, 1), date);

    /// <summary>A time of the local day in hours; summer time shifts it as it shifts the crew.</summary>
    Instant At(double hours) => (date.AtMidnight() + Period.FromSeconds((long)(hours * 3600))).InZoneLeniently(zone).ToInstant();

    void Morning()
    {
        // A furnace left to idle over the free days is brought back before the first class.
        if (!IsWorkingDay(date.PlusDays(-1))) acts.Add(new SetFurnace(At(3.5), Quillmere.WorkingCelsius, 40));
        acts.Add(new LightGloryHole(At(8 + draws.Between(0, 0.2)), IsLit: true));
        foreach (var annealer in new[] { Quillmere.FirstAnnealer, Quillmere.SecondAnnealer })
        {
            acts.Add(new EmptyAnnealer(At(8.2 + draws.Between(0, 0.1)), annealer));
            acts.Add(new HeatAnnealer(At(8.4 + draws.Between(0, 0.1)), annealer));
        }

        if (draws.Happens(0.85)) acts.Add(new Dip(At(8.7 + draws.Between(0, 0.2)), draws.Normal(0.005), PlansCharge: false));
        acts.Add(new SetMode(At(9), Quillmere.Furnace, "working"));
    }

    void Bench(int bench)
    {
        var who = $"bench-{bench}";
        var hour = 9.75 + draws.Between(0, 0.4);
        while (hour < 17.3)
        {
            if (hour is > 12.4 and < 13.2)
            {
                hour = 13.2 + draws.Between(0, 0.2);
                continue;
            }

            hour = Piece(who, hour) + draws.Between(1, 6) / 60 / hidden.BusynessFactor;
        }
    }

    /// <summary>One piece: one to three gathers on top of each other, heats between, then into an annealer.</summary>
    /// <returns>Hour at which the bench is free again.</returns>
    double Piece(string who, double hour)
    {
        var gathers = draws.Unit() switch { < 0.25 => 1, < 0.65 => 2, _ => 3 };
        var kilograms = 0.0;
        for (var i = 0; i < gathers; i++)
        {
            var size = i switch
            {
                0 => draws.Happens(0.5) ? GatherSize.Small : GatherSize.Medium,
                1 => draws.Happens(0.6) ? GatherSize.Medium : GatherSize.Large,
                _ => GatherSize.Large,
            };
            kilograms += Add(who, hour, size);
            hour += draws.Between(2.5, 6) / 60;
            if (size != GatherSize.Large) continue;
            acts.Add(new OpenGloryHole(At(hour), draws.Between(50, 110)));
            hour += draws.Between(2, 4) / 60;
        }

        hour += draws.Between(4.5, 11) / 60 / hidden.BusynessFactor;

        // A third of what is gathered ends as moil and trim (common practice 25 to 40 % of blown work).
        acts.Add(new PutWareIn(At(hour), draws.Happens(0.5) ? Quillmere.FirstAnnealer : Quillmere.SecondAnnealer, kilograms * 0.66));
        return hour;
    }

    double Add(string who, double hour, GatherSize size)
    {
        var (believed, factor) = size switch
        {
            GatherSize.Small => (Quillmere.SmallGatherKilograms, hidden.SmallGatherFactor),
            GatherSize.Medium => (Quillmere.MediumGatherKilograms, hidden.MediumGatherFactor),
            _ => (Quillmere.LargeGatherKilograms, hidden.LargeGatherFactor),
        };
        var kilograms = believed * factor * Math.Clamp(1 + draws.Normal(0.15), 0.5, 1.6);
        var isForgotten = draws.Happens(hidden.ForgottenShare);
        var logged = draws.Happens(hidden.WrongSizeShare) ? (size == GatherSize.Medium ? GatherSize.Large : GatherSize.Medium) : size;
        var delay = Duration.FromSeconds(draws.Whole(10, 150));
        acts.Add(new Gather(At(hour), size, kilograms, who, isForgotten ? null : logged, delay));
        return kilograms;
    }

    void Evening()
    {
        if (draws.Happens(0.1))
        {
            var kilograms = draws.Between(2, 4);
            acts.Add(new LadleOut(At(17.75), kilograms, Math.Round(kilograms * (1 + draws.Normal(0.04)), 1)));
        }

        acts.Add(new Dip(At(17.95 + draws.Between(0, 0.1)), draws.Normal(0.005), PlansCharge: true));
        acts.Add(new LightGloryHole(At(18.1 + draws.Between(0, 0.1)), IsLit: false));
        var isSaturday = date.DayOfWeek == IsoDayOfWeek.Saturday;
        acts.Add(new StartProgramme(At(18.4), Quillmere.FirstAnnealer, AnnealingProgramme.Overnight));
        acts.Add(new StartProgramme(At(18.45), Quillmere.SecondAnnealer, isSaturday ? AnnealingProgramme.OverTheWeekend : AnnealingProgramme.Overnight));
        Charging();

        // Cook, squeeze, and back to work or down to idle: the controller's own timer.
        acts.Add(new SetFurnace(At(26), Quillmere.SqueezeCelsius, 35, IsForCharge: true));
        acts.Add(isSaturday ? new SetFurnace(At(30), Quillmere.IdleCelsius, 20) : new SetFurnace(At(29.5), Quillmere.WorkingCelsius, 50));
    }

    void Charging()
    {
        var isBatch = draws.Happens(hidden.BatchEveningShare);
        acts.Add(new SetFurnace(At(18.2), Quillmere.CookCelsius, 60, IsForCharge: true));
        for (var load = 0; load < ChargeLoads; load++)
            acts.Add(new ChargeLoad(At(18.35 + 0.67 * load + draws.Between(0, 0.1)), isBatch, load == 0, load == ChargeLoads - 1));
    }
}
