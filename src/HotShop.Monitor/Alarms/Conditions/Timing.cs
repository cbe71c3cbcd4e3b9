using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

internal enum Turn { None, Raise, Clear }

/// <summary>Since when a condition has been wrong, or good again. Times are those of the samples; a gap or a restart does not reset them.</summary>
internal sealed record Timing(Instant? WrongSince = null, int WrongSamples = 0, Instant? FineSince = null, int FineSamples = 0)
{
    public static readonly Timing Quiet = new();

    /// <summary>Two samples must agree: one may be noise. More are not counted, so that a lasting condition changes nothing in memory.</summary>
    public const int SamplesWanted = 2;

    /// <param name="now">What was remembered before.</param>
    /// <param name="isActive">The alarm is raised.</param>
    /// <param name="samplesWanted">2 for a channel that reports periodically; 1 where a value holds until it changes.</param>
    public static (Timing Timing, Turn Turn) Next(
        Timing now, bool isActive, in Finding finding, Instant at, Duration onDelay, Duration offDelay, int samplesWanted) => (finding.Verdict, isActive) switch
    {
        (Verdict.NotWanted, true) => (Quiet, Turn.Clear),
        (Verdict.NotWanted, false) => (Quiet, Turn.None),
        (Verdict.Wrong, true) => (now.FineSince is null ? now : Quiet, Turn.None),
        (Verdict.Between, true) => (now.FineSince is null ? now : Quiet, Turn.None),
        (Verdict.Wrong, false) => Wrong(now, finding.Start ?? at, at, onDelay, samplesWanted),
        (Verdict.Fine, false) => (Quiet, Turn.None),
        (Verdict.Fine, true) => Fine(now, at, offDelay, samplesWanted),
        _ => (now, Turn.None),
    };

    static (Timing, Turn) Wrong(Timing now, Instant start, Instant at, Duration onDelay, int samplesWanted)
    {
        var since = now.WrongSince ?? start;
        var samples = Math.Min(now.WrongSamples + 1, SamplesWanted);
        var next = now.WrongSince == since && now.WrongSamples == samples ? now : new Timing(since, samples);
        return (next, samples >= samplesWanted && at - since >= onDelay ? Turn.Raise : Turn.None);
    }

    static (Timing, Turn) Fine(Timing now, Instant at, Duration offDelay, int samplesWanted)
    {
        var since = now.FineSince ?? at;
        var samples = Math.Min(now.FineSamples + 1, SamplesWanted);
        return samples >= samplesWanted && at - since >= offDelay
            ? (Quiet, Turn.Clear)
            : (now.FineSince == since && now.FineSamples == samples ? now : new Timing(FineSince: since, FineSamples: samples), Turn.None);
    }
}
