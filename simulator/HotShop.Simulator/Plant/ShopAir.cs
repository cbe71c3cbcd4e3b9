namespace HotShop.Simulator.Plant;

/// <summary>
/// The air of the shop as one well-stirred box under the hoods: unburnt gas and a little carbon monoxide from the burners.
/// </summary>
internal sealed class ShopAir
{
    const double CubicMetres = 600, AirChangesPerHour = 6, LowerExplosiveLimitPercent = 4.4, HoodShare = 0.75, MonoxidePartsPerMillionInFlue = 120;

    double gasCubicMetres, monoxideCubicMetres;

    /// <summary>Lower explosive limit of methane 4.4 vol % (IEC 60079-20-1).</summary>
    public double CombustiblePercentOfLimit => gasCubicMetres / CubicMetres * 100 / LowerExplosiveLimitPercent * 100;

    public double CarbonMonoxidePartsPerMillion => 0.4 + monoxideCubicMetres / CubicMetres * 1e6;

    /// <summary>Lets burners give off and the hoods draw away. A quarter of what leaves a furnace misses the hood.</summary>
    public void Step(double seconds, double unburntCubicMetresPerHour, double burntCubicMetresPerHour)
    {
        var hours = seconds / 3600;
        var kept = 1 - AirChangesPerHour * hours;
        gasCubicMetres = gasCubicMetres * kept + unburntCubicMetresPerHour * (1 - HoodShare) * hours;

        // About 10.5 m³ of flue gas for each m³ of gas.
        monoxideCubicMetres = monoxideCubicMetres * kept + burntCubicMetresPerHour * 10.5 * MonoxidePartsPerMillionInFlue * 1e-6 * (1 - HoodShare) * hours;
    }
}
