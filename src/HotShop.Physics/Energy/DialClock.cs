using HotShop.Physics.Statistics;

namespace HotShop.Physics.Energy;

/// <summary>What a dial on a gas meter tells while somebody presses a button each time its hand passes the top.</summary>
/// <param name="Turns">Whole turns between the first press and the last.</param>
/// <param name="SecondsPerTurn">s.</param>
/// <param name="CubicMetresPerHour">Flow as the meter counts it, m³/h.</param>
public sealed record DialReading(int Turns, Estimate SecondsPerTurn, Estimate CubicMetresPerHour)
{
    /// <summary>True flow over what a burner's own sensor shows: multiply the sensor by it.</summary>
    /// <param name="shownCubicMetresPerHour">What the sensor showed meanwhile, at the same conditions, m³/h, above 0.</param>
    public Estimate MeterFactor(double shownCubicMetresPerHour) => CubicMetresPerHour / Estimate.Exact(Require.Positive(shownCubicMetresPerHour));
}

/// <summary>Clocks the dial of a gas meter: 3600 times the dial's volume over the seconds of a turn.</summary>
public static class DialClock
{
    /// <summary>How far a press lies from the moment it means, standard, in s (common practice: an eye and a thumb are good to a fifth of a second).</summary>
    public const double PressSeconds = 0.2;

    /// <summary>Flow from presses, one at each turn; none may be left out.</summary>
    /// <param name="dialCubicMetres">Volume of one turn, m³, above 0.</param>
    /// <param name="pressSeconds">Times of the presses in s from any start, rising; 2 or more.</param>
    /// <remarks>Least squares of time over the number of the turn. Uncertainty: that of a press, or the scatter of the presses around the line where it is larger
    /// and there are four or more. Source of the formula for the slope's variance: JCGM 100:2008 (GUM), H.3.</remarks>
    /// <exception cref="ArgumentException">Fewer than two presses, or times that do not rise.</exception>
    public static DialReading Read(double dialCubicMetres, IReadOnlyList<double> pressSeconds)
    {
        Require.Positive(dialCubicMetres);
        ArgumentNullException.ThrowIfNull(pressSeconds);
        var count = pressSeconds.Count;
        if (count < 2) throw new ArgumentException("a turn needs two presses: one when it begins, one when it ends", nameof(pressSeconds));
        for (var i = 1; i < count; i++)
            if (!(Require.Finite(pressSeconds[i]) > Require.Finite(pressSeconds[i - 1]))) throw new ArgumentException($"press {i + 1} is not later than the one before it", nameof(pressSeconds));

        var (meanTurn, meanSeconds) = ((count - 1) / 2.0, pressSeconds.Average());
        double spread = 0, slope = 0;
        for (var i = 0; i < count; i++)
        {
            spread += (i - meanTurn) * (i - meanTurn);
            slope += (i - meanTurn) * (pressSeconds[i] - meanSeconds);
        }
        var seconds = slope / spread;
        var left = pressSeconds.Select((s, i) => s - meanSeconds - seconds * (i - meanTurn)).Sum(r => r * r);
        var scatter = count >= 4 ? Math.Sqrt(left / (count - 2)) : 0;
        var turn = new Estimate(seconds, Math.Max(PressSeconds, scatter) / Math.Sqrt(spread));
        return new DialReading(count - 1, turn, Estimate.Exact(3600 * dialCubicMetres) / turn);
    }
}
