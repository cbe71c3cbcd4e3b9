using NodaTime;

namespace HotShop.Physics.Energy;

/// <summary>Adds up a signal over a stretch of time. Pure: the same samples give the same bits.</summary>
public static class HourIntegral
{
    /// <summary>Integral, covered time and extremes of a signal from <paramref name="from"/> up to
    /// <paramref name="to"/>.</summary>
    /// <param name="from">Start, included.</param>
    /// <param name="to">End, not included; not before <paramref name="from"/>.</param>
    /// <param name="samples">Sorted by time, with the neighbours before <paramref name="from"/> and after <paramref name="to"/>,
    /// so that segments crossing an edge can be cut there.</param>
    /// <param name="course">What the signal does between samples.</param>
    /// <param name="longestGap">Linear: a segment longer than this is unmeasured and adds nothing. Held: a value holds no longer
    /// than this after its sample.</param>
    /// <exception cref="ArgumentException">Samples out of order, or not finite.</exception>
    public static HourTotal Of(Instant from, Instant to, IReadOnlyList<Sample> samples, Course course, Duration longestGap)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentOutOfRangeException.ThrowIfLessThan(to, from);
        var sum = new Sum(from, to);
        for (var i = 0; i < samples.Count; i++)
        {
            var here = samples[i];
            SampleOrder.Check(samples, i);
            if (here.At >= from && here.At < to) sum.Count(here.Value);
            if (course == Course.Held) sum.AddHeld(here, HeldUntil(i));
            else if (i > 0 && here.At - samples[i - 1].At <= longestGap) sum.AddLinear(samples[i - 1], here);
        }
        return sum.Total;

        Instant HeldUntil(int i)
        {
            var latest = samples[i].At + longestGap;
            return i + 1 < samples.Count ? Instant.Min(samples[i + 1].At, latest) : latest;
        }
    }

    /// <summary>Running sum over segments cut to the stretch. Covered time is kept in whole nanoseconds, so a full hour is
    /// exactly 3600 s.</summary>
    struct Sum(Instant from, Instant to)
    {
        double integralHours;
        Duration covered;
        double? min, max;
        int count;

        public readonly HourTotal Total => new(integralHours, covered.TotalSeconds, min, max, count);

        public void Count(double value)
        {
            count++;
            Include(value);
        }

        public void AddHeld(Sample sample, Instant until)
        {
            var start = Instant.Max(sample.At, from);
            var end = Instant.Min(until, to);
            if (end <= start) return;
            Add(end - start, sample.Value, sample.Value);
        }

        public void AddLinear(Sample a, Sample b)
        {
            var start = Instant.Max(a.At, from);
            var end = Instant.Min(b.At, to);
            if (end <= start) return;
            Add(end - start, Between(a, b, start), Between(a, b, end));
        }

        void Add(Duration span, double first, double last)
        {
            integralHours += (first + last) / 2 * span.TotalHours;
            covered += span;
            Include(first);
            Include(last);
        }

        void Include(double value)
        {
            min = min is { } low ? Math.Min(low, value) : value;
            max = max is { } high ? Math.Max(high, value) : value;
        }

        static double Between(Sample a, Sample b, Instant at)
        {
            if (at == a.At) return a.Value;
            if (at == b.At) return b.Value;
            return a.Value + (b.Value - a.Value) * ((at - a.At).TotalNanoseconds / (b.At - a.At).TotalNanoseconds);
        }
    }
}
