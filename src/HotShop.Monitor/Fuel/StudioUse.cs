using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>How an energy is known: by its own meter or sensor; as what a main meter leaves over or as a spread of typed readings; or from nameplates and on-time.</summary>
public enum Origin { Measured, Derived, Estimated }

/// <summary>What one appliance used of one kind of energy over a stretch of time.</summary>
/// <param name="Appliance">Id; what is left over of a main meter goes to the shop.</param>
/// <param name="KilowattHours">Gas: gross.</param>
/// <param name="BaseCubicMetres">Gas at base conditions; 0 where it was only estimated as energy, or for electricity.</param>
/// <param name="LineCubicMetres">As the meter counted it.</param>
public sealed record FuelShare(string Appliance, EnergyKind Kind, Origin Origin, Estimate KilowattHours, double BaseCubicMetres, double LineCubicMetres);

/// <summary>What the studio used over a stretch of time. The gas shares make the gas, the electric ones the electricity: nothing is counted twice.</summary>
/// <param name="MeasuredShare">Part of the time that a meter or sensor speaks for, 0 to 1.</param>
/// <param name="Resets">Times a counter lost its thread.</param>
public sealed record StudioUse(Instant From, Instant To, IReadOnlyList<FuelShare> Shares, Estimate Gas, Estimate Electricity, double MeasuredShare, int Resets);
