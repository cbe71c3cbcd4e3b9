using HotShop.Physics.Energy;
using NodaTime;

namespace HotShop.Physics.Tests;

/// <summary>Small builders for tests.</summary>
internal static class Some
{
    public static readonly Instant Noon = Instant.FromUtc(2026, 3, 1, 12, 0);

    public static Instant At(double minutes) => Noon + Duration.FromMinutes(minutes);

    /// <summary>Samples from pairs of minutes after noon and value.</summary>
    public static Sample[] Samples(params (double Minutes, double Value)[] points) => [.. points.Select(p => new Sample(At(p.Minutes), p.Value))];

    public static Sample[] Every(double minutes, double from, double to, Func<double, double> value)
    {
        var samples = new List<Sample>();
        for (var i = 0; from + i * minutes <= to; i++) samples.Add(new(At(from + i * minutes), value(from + i * minutes)));
        return [.. samples];
    }
}
