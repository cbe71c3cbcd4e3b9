using NodaTime;

namespace HotShop.Physics.Energy;

/// <summary>A value with its time; the unit is the caller's (m³/h, kW, °C, 0 or 1).</summary>
public readonly record struct Sample(Instant At, double Value);
