using NodaTime;

namespace HotShop.Physics.Annealing;

/// <summary>One part of a curve: go to a temperature at a rate, or stay.</summary>
public abstract record Stage
{
    Stage() { }

    /// <summary>Go up or down to a temperature, °C, at a rate in K/h (a magnitude: the target gives the direction).</summary>
    public sealed record Ramp(double TargetCelsius, double KelvinPerHour) : Stage
    {
        public double TargetCelsius { get; } = Require.Celsius(TargetCelsius);

        public double KelvinPerHour { get; } = Require.Positive(KelvinPerHour);
    }

    /// <summary>Stay at the temperature reached.</summary>
    public sealed record Hold(Duration For) : Stage
    {
        public Duration For { get; } = For >= Duration.Zero
            ? For
            : throw new ArgumentOutOfRangeException(nameof(For), For, "a hold cannot be shorter than nothing");
    }
}
