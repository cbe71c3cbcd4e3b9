using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>How a night's gas lies among earlier ones of its kind.</summary>
enum GasVerdict { TooFewNights, AsUsual, More, Less }

/// <summary>Gas of a night against nights of the same kind, over the same hours of the clock.</summary>
/// <param name="KilowattHours">Gross, with its standard uncertainty.</param>
/// <param name="BaseCubicMetres">At base conditions; 0 where gas is only estimated as energy.</param>
/// <param name="MeasuredShare">Part of the time that a meter or sensor speaks for, 0 to 1.</param>
/// <param name="Nights">How many earlier nights it is compared with.</param>
/// <param name="MedianKilowattHours">Of the earlier nights; null where there are too few.</param>
/// <param name="LeastKilowattHours">The smallest and the largest of them.</param>
sealed record NightGas(
    Instant From, Instant To, Estimate KilowattHours, Estimate BaseCubicMetres, double MeasuredShare, int Nights,
    Estimate? MedianKilowattHours, Estimate? LeastKilowattHours, Estimate? MostKilowattHours, GasVerdict Verdict)
{
    /// <summary>Of fewer nights nothing is said: their range is chance. A choice.</summary>
    public const int FewestNights = 4;

    /// <param name="others">Energy of earlier nights, kWh.</param>
    public static NightGas Among(Instant from, Instant to, Estimate kilowattHours, Estimate baseCubicMetres, double measuredShare, IReadOnlyList<Estimate> others)
    {
        if (others.Count < FewestNights) return new(from, to, kilowattHours, baseCubicMetres, measuredShare, others.Count, null, null, null, GasVerdict.TooFewNights);
        var sorted = others.OrderBy(o => o.Value).ToList();
        var median = sorted.Count % 2 == 1 ? sorted[sorted.Count / 2] : Middle(sorted[sorted.Count / 2 - 1], sorted[sorted.Count / 2]);
        // One meter measured all of them: its error makes no night different from the others. So it is the values that are compared, not their intervals.
        var verdict = kilowattHours.Value > sorted[^1].Value ? GasVerdict.More : kilowattHours.Value < sorted[0].Value ? GasVerdict.Less : GasVerdict.AsUsual;
        return new(from, to, kilowattHours, baseCubicMetres, measuredShare, others.Count, median, sorted[0], sorted[^1], verdict);
    }

    /// <summary>Of two nights by one meter: its error is the same in both.</summary>
    static Estimate Middle(Estimate a, Estimate b) => StudioUse.Common([a, b]) / Estimate.Exact(2);
}

/// <summary>Adds up the gas of nights.</summary>
sealed class NightGasBook(StudioPlan plan, StudioFuel fuel, NightCalendar calendar)
{
    /// <summary>Nights further back had another season.</summary>
    const int FurthestDays = 84;

    /// <summary>A night that was measured for less of its time is no measure for another.</summary>
    const double LeastMeasuredShare = 0.8;

    /// <returns>Null where the studio has no gas, or the night has no whole hour yet.</returns>
    public NightGas? Of(Night night, Instant now)
    {
        if (night.GasTo <= night.GasFrom || Sum(night.GasFrom, night.GasTo, now) is not { } own) return null;
        var others = new List<Estimate>();
        for (var back = 1; back <= FurthestDays && others.Count < plan.Configuration.Handover.Nights; back++)
        {
            var morning = night.Morning.PlusDays(-back);
            if (night.Kind != NightKind.NotKnown && calendar.KindBefore(morning, now) != night.Kind) continue;
            var (from, to) = calendar.SameHours(night, morning);
            if (Sum(from, to, now) is { MeasuredShare: >= LeastMeasuredShare } other && other.Energy.Value > 0) others.Add(other.Energy);
        }
        return NightGas.Among(night.GasFrom, night.GasTo, own.Energy, own.CubicMetres, own.MeasuredShare, others);
    }

    (Estimate Energy, Estimate CubicMetres, double MeasuredShare)? Sum(Instant from, Instant to, Instant now)
    {
        if (to <= from || fuel.Use(from, to, FuelStep.Month, now) is not { Count: > 0 } uses) return null;
        var use = StudioUse.Sum(uses);
        return use.GasMeasuredShare is { } share ? (use.Gas, use.GasVolume, share) : null;
    }
}
