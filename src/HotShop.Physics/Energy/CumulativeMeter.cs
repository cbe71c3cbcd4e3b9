using NodaTime;

namespace HotShop.Physics.Energy;

/// <summary>Reads consumption off a counter that only runs forward: gas volume, electric energy. Pure: the same samples give the
/// same bits.</summary>
public static class CumulativeMeter
{
    // Readings in a row. Three neighbours beyond each edge settle two, so that hour by hour is the same as the whole day.
    const int LongestGlitch = 2;

    /// <summary>Gain from <paramref name="from"/> up to <paramref name="to"/>.</summary>
    /// <param name="from">Start, included.</param>
    /// <param name="to">End, not included; not before <paramref name="from"/>.</param>
    /// <param name="samples">Readings sorted by time, with three neighbours before <paramref name="from"/> and after
    /// <paramref name="to"/> where there are any.</param>
    /// <param name="traits">What is known of the counter.</param>
    /// <remarks>
    /// Between two readings the gain is spread evenly, however long the gap. One or two readings in a row that dip and return, or
    /// jump up and return, are dropped. A step back is a rollover when that is plausible, else a reset. The newest two readings
    /// may still prove a glitch: a step that makes no sense there is left open (not covered, not reported) until later readings
    /// settle it.
    /// </remarks>
    /// <exception cref="ArgumentException">Samples out of order, or not finite.</exception>
    public static MeterTotal Between(Instant from, Instant to, IReadOnlyList<Sample> samples, MeterTraits traits)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(traits);
        ArgumentOutOfRangeException.ThrowIfLessThan(to, from);

        var sum = new Sum(from, to, traits);
        Sample? kept = null;
        for (var i = 0; i < samples.Count; i++)
        {
            SampleOrder.Check(samples, i);
            var here = samples[i];
            if (kept is { } before)
            {
                if (IsGlitch(before, samples, i, traits))
                {
                    sum.DropGlitch(here);
                    continue;
                }
                sum.Add(before, here, isSettled: i + LongestGlitch < samples.Count);
            }
            kept = here;
        }
        return sum.Total;
    }

    /// <summary>Whether a reading leaves the course that a reading soon after takes up again.</summary>
    static bool IsGlitch(Sample before, IReadOnlyList<Sample> samples, int i, MeterTraits traits)
    {
        var here = samples[i].Value;
        for (var j = i + 1; j <= i + LongestGlitch && j < samples.Count; j++)
        {
            var after = samples[j];
            var returns = after.Value >= before.Value && traits.CanGain(after.Value - before.Value, after.At - before.At);
            if (returns && (here < before.Value || here > after.Value)) return true;
        }
        return false;
    }

    struct Sum(Instant from, Instant to, MeterTraits traits)
    {
        readonly List<MeterReset> resets = [];
        double amount;
        Duration covered, gap;
        int glitches;

        public readonly MeterTotal Total => new(amount, covered.TotalSeconds, gap.TotalSeconds, resets, glitches);

        public void DropGlitch(Sample sample)
        {
            if (IsInside(sample.At)) glitches++;
        }

        public void Add(Sample before, Sample here, bool isSettled)
        {
            var span = here.At - before.At;
            if (GainBetween(before, here, span) is { } gain) AddStretch(before.At, here.At, gain, span);
            else if (isSettled && IsInside(here.At)) resets.Add(new(before.At, here.At, before.Value, here.Value));
        }

        readonly double? GainBetween(Sample before, Sample here, Duration span)
        {
            var gain = here.Value - before.Value;
            if (gain >= 0) return traits.CanGain(gain, span) ? gain : null;
            return traits.GainAcrossRollover(before.Value, here.Value, span);
        }

        void AddStretch(Instant start, Instant end, double gain, Duration span)
        {
            var inside = Instant.Min(end, to) - Instant.Max(start, from);
            if (inside <= Duration.Zero) return;
            amount += inside == span ? gain : gain * (inside.TotalNanoseconds / span.TotalNanoseconds);
            covered += inside;
            if (span > traits.LongestGap) gap += inside;
        }

        readonly bool IsInside(Instant at) => at >= from && at < to;
    }
}
