using HotShop.Monitor.Readings;
using HotShop.Physics.Annealing;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>How a temperature kept to what was asked for.</summary>
/// <param name="MostKelvin">Largest deviation, measured minus asked, with its sign.</param>
/// <param name="At">When that was.</param>
/// <param name="Beyond">How long it was more than <see cref="Keeping.WideKelvin"/> off.</param>
/// <param name="IsCurve">Asked by a typed curve; else by the controller's set point.</param>
sealed record Kept(double MostKelvin, Instant At, Duration Beyond, bool IsCurve)
{
    public bool IsClose => Math.Abs(MostKelvin) <= Keeping.WideKelvin;
}

/// <summary>Compares minutes with a set point or a curve. Pure.</summary>
static class Keeping
{
    /// <summary>Off by more than this is worth a word: three times what a good controller keeps. Common practice.</summary>
    public const double WideKelvin = 15;

    /// <summary>Controllers show a set point of a cold appliance too.</summary>
    const double LeastAskedCelsius = 100;

    static readonly Duration minute = Duration.FromMinutes(1);

    /// <returns>Null where nothing was asked for.</returns>
    public static Kept? ToCurve(IReadOnlyList<MinuteRow> measured, AnnealingCurve curve) => Of(measured, curve.SetpointCelsius, isCurve: true);

    /// <param name="asked">Minutes of the set point; it holds until it is heard of again, at most for so long.</param>
    public static Kept? ToSetpoint(IReadOnlyList<MinuteRow> measured, IReadOnlyList<MinuteRow> asked, Duration holds)
    {
        var next = 0;
        MinuteRow? last = null;
        return Of(measured, at =>
        {
            while (next < asked.Count && asked[next].Minute <= at) last = asked[next++];
            return last is not null && at - last.Minute <= holds ? last.Mean : null;
        }, isCurve: false);
    }

    static Kept? Of(IReadOnlyList<MinuteRow> measured, Func<Instant, double?> asked, bool isCurve)
    {
        var (most, at, beyond) = (0.0, (Instant?)null, Duration.Zero);
        foreach (var row in measured)
        {
            if (asked(row.Minute) is not { } wanted || wanted < LeastAskedCelsius) continue;
            var off = row.Mean - wanted;
            if (Math.Abs(off) > WideKelvin) beyond += minute;
            if (at is null || Math.Abs(off) > Math.Abs(most)) (most, at) = (off, row.Minute);
        }
        return at is { } moment ? new(most, moment, beyond, isCurve) : null;
    }
}
