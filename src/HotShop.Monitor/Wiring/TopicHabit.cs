using NodaTime;

namespace HotShop.Monitor.Wiring;

/// <summary>How often a device speaks, from when its last messages came.</summary>
/// <param name="IntervalSeconds">To expect readings in; a round figure not shorter than was seen. Null: too few to tell.</param>
/// <param name="IsOnChange">It speaks so irregularly that silence says nothing: only when something changes.</param>
readonly record struct TopicHabit(double? IntervalSeconds, bool IsOnChange)
{
    const int FewestGaps = 4;
    static readonly double[] round = [1, 2, 5, 10, 15, 20, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 21_600, 43_200, 86_400];

    /// <param name="arrivals">In order of time.</param>
    public static TopicHabit Of(IReadOnlyList<Instant> arrivals)
    {
        var gaps = arrivals.Zip(arrivals.Skip(1), (a, b) => (b - a).TotalSeconds).Order().ToList();
        if (gaps.Count < FewestGaps) return new(null, false);
        var (middle, longest) = (gaps[gaps.Count / 2], gaps[^1]);
        // A periodic device's gaps scatter by the network's delays; one that reports changes has gaps of every length.
        var isOnChange = longest > 3 * middle + 2;
        // Most of the scatter within the interval, so that an ordinary delay is not taken for silence.
        return new(round.FirstOrDefault(r => r >= middle * 0.95, 86_400), isOnChange);
    }
}
