using NodaTime;

namespace HotShop.Monitor.Fuel.Spreading;

/// <summary>What a meter counted over a stretch of time, and what others counted of it.</summary>
/// <param name="KilowattHours">Counted by this meter.</param>
/// <param name="Uncertainty">Of reading it, standard, in kWh; not the meter's own error, which is the same in all its rows.</param>
/// <param name="Serves">Ids of the appliances behind it.</param>
/// <param name="IsOutermost">Read by people, with no other meter before it: its register is what the bill counts.</param>
/// <param name="Measured">What appliances behind it with sensors of their own used meanwhile.</param>
sealed record MeterRow(
    string Meter, Instant From, Instant To, double KilowattHours, double Uncertainty, IReadOnlySet<string> Serves, bool IsOutermost, IReadOnlyList<MeteredPart> Measured)
{
    /// <summary>Relative standard uncertainty of the meter's own error.</summary>
    public required double MeterRelative { get; init; }
}

/// <summary>What the sensor of an appliance counted, kWh, with the relative standard uncertainty of that sensor.</summary>
sealed record MeteredPart(string Appliance, double KilowattHours, double SensorRelative);
