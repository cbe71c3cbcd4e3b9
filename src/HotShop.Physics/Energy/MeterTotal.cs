using NodaTime;

namespace HotShop.Physics.Energy;

/// <summary>A place where a counter lost its thread: it was reset, exchanged, or jumped further than it can count.</summary>
/// <param name="After">Time of the last reading before.</param>
/// <param name="At">Time of the first reading after.</param>
/// <param name="Before">Reading before, in the counter's unit.</param>
/// <param name="Reading">Reading after.</param>
public sealed record MeterReset(Instant After, Instant At, double Before, double Reading);

/// <summary>What a cumulative counter gained over a stretch.</summary>
/// <param name="Amount">Gain in the counter's unit (m³, kWh).</param>
/// <param name="CoveredSeconds">Time whose gain is known, gaps included, in s.</param>
/// <param name="GapSeconds">The part of it where only the total across a long gap is known, spread evenly over the gap, in
/// s.</param>
/// <param name="Resets">Resets inside the stretch (start included, end not). Each loses one interval, which is not
/// covered.</param>
/// <param name="GlitchesDropped">Readings inside the stretch that left the course and came back; they add nothing.</param>
public sealed record MeterTotal(
    double Amount, double CoveredSeconds, double GapSeconds, IReadOnlyList<MeterReset> Resets, int GlitchesDropped);
