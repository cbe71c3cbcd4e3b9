namespace HotShop.Physics.Energy;

/// <summary>What an hour (or any stretch) of samples adds up to.</summary>
/// <param name="IntegralHours">Value times hours over the covered time: m³ from m³/h, kWh from kW.</param>
/// <param name="CoveredSeconds">Time that the samples speak for, in s.</param>
/// <param name="Min">Lowest value over the covered time and the samples inside; <see langword="null"/> when there is
/// neither.</param>
/// <param name="Max">Highest value, likewise.</param>
/// <param name="Count">Samples inside the stretch, its start included and its end not.</param>
public readonly record struct HourTotal(double IntegralHours, double CoveredSeconds, double? Min, double? Max, int Count)
{
    public static HourTotal Nothing => default;

    /// <summary>Mean over the covered time in the samples' unit; <see langword="null"/> when nothing is covered.</summary>
    public double? TimeWeightedMean => CoveredSeconds > 0 ? IntegralHours * 3600 / CoveredSeconds : null;

    /// <summary>Two stretches that do not overlap, added up.</summary>
    public static HourTotal operator +(HourTotal a, HourTotal b) => Add(a, b);

    /// <inheritdoc cref="op_Addition"/>
    public static HourTotal Add(HourTotal a, HourTotal b) => new(
        a.IntegralHours + b.IntegralHours,
        a.CoveredSeconds + b.CoveredSeconds,
        a.Min is { } aMin && b.Min is { } bMin ? Math.Min(aMin, bMin) : a.Min ?? b.Min,
        a.Max is { } aMax && b.Max is { } bMax ? Math.Max(aMax, bMax) : a.Max ?? b.Max,
        a.Count + b.Count);
}
