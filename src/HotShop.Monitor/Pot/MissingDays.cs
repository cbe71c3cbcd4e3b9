using HotShop.Physics.Pot;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>What worked days took of which nobody logged anything: as much as this studio's days usually do, give or take most of it. Pure.</summary>
static class MissingDays
{
    const int LookBackDays = 28, EnoughDays = 3;

    /// <summary>A studio that never logged gathers: a day takes some 15 % of the pot (common practice: two to six days on a pot).</summary>
    const double UsualShareOfPot = 0.15;

    /// <summary>From one working day to the next, as a share of the mean, at least. Common practice.</summary>
    const double LeastScatter = 0.35;

    /// <param name="days">In order.</param>
    public static IReadOnlyList<MissingDay> Of(IReadOnlyList<PotDay> days, double fullKilograms) =>
        [.. days.Where(d => d.IsMissing).Select(d => Expected(d, days, fullKilograms))];

    static MissingDay Expected(PotDay day, IReadOnlyList<PotDay> days, double fullKilograms)
    {
        var like = days.Where(d => d.Date < day.Date && d.Date >= day.Date.PlusDays(-LookBackDays) && d.IsLogged && d.NominalKilograms > 0).Select(d => d.NominalKilograms).ToList();
        var mean = like.Count >= EnoughDays ? like.Average() : UsualShareOfPot * fullKilograms;
        var scatter = like.Count >= EnoughDays ? Math.Sqrt(like.Sum(k => (k - mean) * (k - mean)) / (like.Count - 1)) : 0;
        var uncertainty = Math.Max(scatter, LeastScatter * mean);
        var whole = Math.Sqrt(uncertainty * uncertainty + Math.Pow(PotHabits.Usual.UnloggedSpread * mean, 2));
        return new(day, mean, uncertainty, Quantiles.Normal95 * whole);
    }

    public static PotEvent.UnloggedSpan Event(MissingDay missing) =>
        new(missing.Day.From, missing.Day.To, missing.ExpectedKilograms, missing.StandardUncertaintyKilograms);
}
