using HotShop.Physics.Energy;

namespace HotShop.Physics.FuelGases;

/// <summary>The temperatures for which ISO 6976:2016 tabulates its components. Volumes have no row at 25 °C.</summary>
public enum ReferenceTemperature { Celsius0, Celsius15, Fahrenheit60, Celsius20, Celsius25 }

/// <summary>What a reference temperature is in °C and how the tables call it.</summary>
public static class ReferenceTemperatures
{
    static readonly (ReferenceTemperature Temperature, double Celsius, string Key)[] All =
    [
        (ReferenceTemperature.Celsius0, 0, "0"), (ReferenceTemperature.Celsius15, 15, "15"), (ReferenceTemperature.Fahrenheit60, BaseConditions.Us.Celsius, "15.55"),
        (ReferenceTemperature.Celsius20, 20, "20"), (ReferenceTemperature.Celsius25, 25, "25"),
    ];

    /// <summary>°C.</summary>
    public static double Celsius(this ReferenceTemperature temperature) => All[(int)temperature].Celsius;

    /// <summary>The tabulated temperature of base conditions.</summary>
    /// <exception cref="ArgumentException">The base lies at none of them.</exception>
    public static ReferenceTemperature Of(BaseConditions volume)
    {
        ArgumentNullException.ThrowIfNull(volume);
        foreach (var known in All) if (known.Celsius == volume.Celsius && known.Temperature != ReferenceTemperature.Celsius25) return known.Temperature;
        throw new ArgumentException($"ISO 6976 has no volumes at {volume.Name}: it tabulates 0, 15, 20 °C and 60 °F", nameof(volume));
    }

    internal static string Key(this ReferenceTemperature temperature) => All[(int)temperature].Key;
}
