namespace HotShop.Simulator.Plant;

/// <summary>A thermocouple in its tube: slow by a time constant, off by a constant, and whatever faults do to it.</summary>
internal sealed class Couple(double lagSeconds, double offsetKelvin, double startCelsius)
{
    double junctionCelsius = startCelsius;
    double driftKelvin;

    /// <summary>Broken: the input is driven beyond its range.</summary>
    public bool IsOpen { get; private set; }

    /// <summary>What the instrument makes of it, without noise, in °C. Means nothing while open.</summary>
    public double IndicatedCelsius => junctionCelsius + offsetKelvin + driftKelvin;

    public void SettleAt(double celsius) => junctionCelsius = celsius;

    public void Step(double seconds, double surroundingCelsius, bool isOpen, double? hoursOfDrift)
    {
        junctionCelsius += (surroundingCelsius - junctionCelsius) * Math.Min(1, seconds / lagSeconds);
        IsOpen = isOpen;
        driftKelvin = -10 * (hoursOfDrift ?? 0);
    }
}
