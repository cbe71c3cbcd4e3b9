using NodaTime;

namespace HotShop.Physics.Glass;

/// <summary>From cold charge to flat melt, as a balance of heat.</summary>
public static class MeltOut
{
    /// <summary>Time until a charge has its heat.</summary>
    /// <param name="glassKilograms">That it will be, kg.</param>
    /// <param name="kilojoulesPerKilogram">Heat to melt it; see <see cref="GlassProfile.MeltingKilojoulesPerKilogram"/>.</param>
    /// <param name="netKilowatts">What reaches the glass beyond what holds the furnace hot, kW: a fifth to a third of the burner's extra
    /// fire (common practice).</param>
    public static Duration Time(double glassKilograms, double kilojoulesPerKilogram, double netKilowatts) =>
        Duration.FromSeconds(Require.NotNegative(glassKilograms) * Require.NotNegative(kilojoulesPerKilogram) / Require.Positive(netKilowatts));

    /// <summary>Temperature after cold glass has gone into hot, with no heat in or out, °C.</summary>
    public static double MixedCelsius(GlassHeat glass, double hotKilograms, double hotCelsius, double coldKilograms, double coldCelsius)
    {
        ArgumentNullException.ThrowIfNull(glass);
        var (hot, cold) = (Require.NotNegative(hotKilograms), Require.NotNegative(coldKilograms));
        return glass.CelsiusAtContent((hot * glass.ContentKilojoulesPerKilogram(hotCelsius) + cold * glass.ContentKilojoulesPerKilogram(coldCelsius)) / Require.Positive(hot + cold));
    }
}
