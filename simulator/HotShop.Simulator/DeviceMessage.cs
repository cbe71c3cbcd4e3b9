using NodaTime;

namespace HotShop.Simulator;

/// <summary>One message as a device publishes it, QoS 1.</summary>
/// <param name="At">When it leaves the device; the time inside the payload is earlier for a reading that was held back.</param>
/// <param name="Device">Client that publishes it, such as `dev-furnace-1`.</param>
public sealed record DeviceMessage(Instant At, string Device, string Topic, string Payload, bool Retain);
