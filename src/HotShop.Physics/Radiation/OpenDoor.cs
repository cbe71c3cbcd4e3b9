namespace HotShop.Physics.Radiation;

/// <summary>Heat that leaves through an opening.</summary>
public static class OpenDoor
{
    /// <summary>Radiated power, kW: ε F A σ (T⁴ − T_air⁴).</summary>
    /// <param name="areaSquareMetres">Of the opening, m².</param>
    /// <param name="celsius">Of the chamber, °C.</param>
    /// <param name="emissivity">0 to 1; a chamber seen through a hole 0.9 to 1.</param>
    /// <param name="viewFactor">Share of the hemisphere that gets out, 0 to 1; below 1 where the wall is thick against the
    /// hole.</param>
    /// <param name="surroundingsCelsius">°C.</param>
    /// <remarks>Stefan-Boltzmann law. Hot gas that escapes comes on top.</remarks>
    public static double RadiatedKilowatts(
        double areaSquareMetres, double celsius, double emissivity = 0.9, double viewFactor = 1, double surroundingsCelsius = 20)
    {
        var hot = PhysicalConstants.Kelvin(Require.Celsius(celsius));
        var cold = PhysicalConstants.Kelvin(Require.Celsius(surroundingsCelsius));
        return Require.NotNegative(areaSquareMetres) * Require.Share(emissivity) * Require.Share(viewFactor)
            * PhysicalConstants.StefanBoltzmann * (Math.Pow(hot, 4) - Math.Pow(cold, 4)) / 1000;
    }
}
