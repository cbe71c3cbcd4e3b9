using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Physics.Pot;

/// <summary>Estimates the glass in a pot from its log. Pure: the same log gives the same answer, whenever it is asked.</summary>
/// <param name="Pot">Inside of the pot and density of the melt.</param>
/// <param name="Habits">What is believed of the studio beforehand.</param>
/// <param name="StartKilograms">Glass before the first event, kg; <see langword="null"/>: not known.</param>
public sealed record PotEstimator(GlassMass Pot, PotHabits? Habits = null, Estimate? StartKilograms = null)
{
    /// <summary>What is in the pot at a moment, by all that happened up to it and nothing later.</summary>
    /// <param name="at">The moment, included.</param>
    /// <param name="log">Events in any order; of two at the same moment the first listed is taken first. A tally of a span
    /// counts for the whole span, also for moments within it.</param>
    public PotState At(Instant at, IReadOnlyList<PotEvent> log) => Trace([at], log)[0];

    /// <summary>The same at many moments in one pass.</summary>
    /// <param name="moments">Sorted by time.</param>
    /// <param name="log">As for <see cref="At"/>.</param>
    /// <exception cref="ArgumentException">Moments out of order.</exception>
    public IReadOnlyList<PotState> Trace(IReadOnlyList<Instant> moments, IReadOnlyList<PotEvent> log)
    {
        ArgumentNullException.ThrowIfNull(moments);
        ArgumentNullException.ThrowIfNull(log);
        var steps = PotTimeline.Of(log);
        var filter = new PotFilter(Pot, Habits ?? PotHabits.Usual, StartKilograms);
        var states = new PotState[moments.Count];
        var next = 0;
        for (var i = 0; i < moments.Count; i++)
        {
            if (i > 0 && moments[i] < moments[i - 1])
                throw new ArgumentException($"moment {i} comes before moment {i - 1}: sort by time", nameof(moments));
            while (next < steps.Count && steps[next].At <= moments[i]) filter.Apply(steps[next++]);
            states[i] = new PotState(moments[i], filter.Copy());
        }
        return states;
    }
}
