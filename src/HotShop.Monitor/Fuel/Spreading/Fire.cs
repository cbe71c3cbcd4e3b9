using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel.Spreading;

/// <summary>A part of what an appliance without a meter of its own uses: so many kilowatts during hours that are known.</summary>
/// <param name="Kilowatts">What is believed of it before any meter is asked.</param>
/// <param name="Hours">Hours of it in a stretch of time.</param>
/// <param name="Wander">How an hour's power lies around the mean of its kind.</param>
sealed record Fire(string Appliance, Estimate Kilowatts, Func<Instant, Instant, double> Hours, Wander Wander);

/// <summary>How a power wanders around its mean: by how much, and for how long it stays on one side.</summary>
/// <param name="RelativeDeviation">Standard deviation of a moment over the mean.</param>
/// <param name="HoldsHours">Correlation time in h.</param>
sealed record Wander(double RelativeDeviation, double HoldsHours)
{
    /// <summary>Known on-time: what is left is the nameplate's error, which is the same in every hour, and a little of the mains' voltage.</summary>
    public static readonly Wander OnTime = new(0.05, 6);

    /// <summary>A known mode: a quarter around its mean, for a quarter of a day (common practice: doors, charges, weather).</summary>
    public static readonly Wander Mode = new(0.25, 6);

    /// <summary>Nothing known of the hours between two readings: a fire may be out half the day.</summary>
    public static readonly Wander Unknown = new(0.8, 12);

    /// <summary>Relative variance of the mean over a stretch.</summary>
    public double VarianceOver(double hours) => RelativeDeviation * RelativeDeviation * TimeAverage.VarianceShare(Math.Max(0, hours), HoldsHours);
}
