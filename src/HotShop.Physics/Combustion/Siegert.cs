namespace HotShop.Physics.Combustion;

/// <summary>Siegert's formula for the flue loss of a boiler. At furnace temperature it is several points too kind: use <see cref="HeatBalance"/>; this stands beside it to show how far.</summary>
/// <param name="PerOxygen">A2.</param>
/// <param name="PerKelvin">B.</param>
/// <remarks>Loss in % of the net heat = (t_flue - t_air) (A2 / (21 - O2) + B), O2 in % of the dry gas. Source of the constants: EN 50379, from memory.</remarks>
public sealed record Siegert(double PerOxygen, double PerKelvin)
{
    public static Siegert NaturalGas { get; } = new(0.66, 0.009);
    public static Siegert LiquefiedGas { get; } = new(0.63, 0.008);

    const double OxygenOfAirPercent = 21;

    /// <summary>Loss over the net heat of the fuel, as a fraction.</summary>
    /// <param name="flueCelsius">°C.</param>
    /// <param name="airCelsius">°C.</param>
    /// <param name="dryOxygenFraction">0 to below 0.21.</param>
    public double FlueLossOfNet(double flueCelsius, double airCelsius, double dryOxygenFraction)
    {
        var oxygenPercent = 100 * Require.NotNegative(dryOxygenFraction);
        if (oxygenPercent >= OxygenOfAirPercent) throw new ArgumentOutOfRangeException(nameof(dryOxygenFraction), dryOxygenFraction, "expected 0 to below 0.21");
        return (Require.Celsius(flueCelsius) - Require.Celsius(airCelsius)) * (PerOxygen / (OxygenOfAirPercent - oxygenPercent) + PerKelvin) / 100;
    }
}
