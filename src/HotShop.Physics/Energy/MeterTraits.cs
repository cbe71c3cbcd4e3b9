using NodaTime;

namespace HotShop.Physics.Energy;

/// <summary>What is known of a cumulative counter.</summary>
/// <param name="Digits">Digits of the register before the point, in the samples' unit: it rolls over at 10^Digits.
/// <see langword="null"/>: it does not roll over.</param>
/// <param name="MaximumPerHour">The most it can count in an hour, in the samples' unit. <see langword="null"/>: not
/// known.</param>
/// <param name="LongestGap">Between samples further apart than this the amount is known but its course is not.</param>
public sealed record MeterTraits(int? Digits, double? MaximumPerHour, Duration LongestGap)
{
    // A register counts in steps and its stamps jitter: one step a second later than the last is no impossible flow.
    static readonly Duration Grace = Duration.FromMinutes(1);

    public int? Digits { get; } = Digits is null or (>= 1 and <= 15)
        ? Digits
        : throw new ArgumentOutOfRangeException(nameof(Digits), Digits, "expected 1 to 15 digits");

    public double? MaximumPerHour { get; } = MaximumPerHour is { } most ? Require.Positive(most, nameof(MaximumPerHour)) : null;

    /// <summary>Whether the counter can have gained this much in this time.</summary>
    public bool CanGain(double amount, Duration span) =>
        MaximumPerHour is not { } most || amount <= most * (span + Grace).TotalHours;

    /// <summary>Amount counted when the register passed its end between two readings.</summary>
    /// <returns><see langword="null"/> when the step back is no rollover: no digits known, more than the meter can count,
    /// or, without a known maximum, not from the top tenth of the register to its bottom tenth.</returns>
    public double? GainAcrossRollover(double before, double after, Duration span)
    {
        if (Digits is not { } digits) return null;
        var register = Math.Pow(10, digits);
        if (before >= register) return null;
        var gain = after + register - before;
        var plausible = MaximumPerHour is null ? before >= 0.9 * register && after <= 0.1 * register : CanGain(gain, span);
        return plausible ? gain : null;
    }
}
