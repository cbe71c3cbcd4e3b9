using NodaTime;

namespace HotShop.Physics.Melting;

/// <summary>What an hour of a melting furnace burnt, and what was done at it.</summary>
/// <param name="KilowattHours">Gross; <see langword="null"/> where it was not measured throughout.</param>
/// <param name="SetpointCelsius">Mean of the hour; <see langword="null"/> where nobody measures it.</param>
/// <param name="ChargedKilograms">Glass that the hour's charges leave, kg.</param>
/// <param name="ReactingKilograms">Part of it from batch, whose reactions take heat of their own, kg.</param>
/// <param name="Gathers">Gathers logged; from a tally of a span, their share.</param>
/// <param name="IsWorkUnlogged">Somebody may have gathered without logging it.</param>
public sealed record FurnaceHour(
    Instant From, double? KilowattHours, double? SetpointCelsius, double ChargedKilograms, double ReactingKilograms, double Gathers, bool IsWorkUnlogged = false)
{
    public double ChargedKilograms { get; } = Require.NotNegative(ChargedKilograms);

    public double ReactingKilograms { get; } = Require.NotNegative(ReactingKilograms);

    public double Gathers { get; } = Require.NotNegative(Gathers);
}
