using HotShop.Physics.Energy;

namespace HotShop.Physics.FuelGases;

/// <summary>What a heating value per volume refers to: the temperature of burning and the conditions of the volume. The same gas differs by 5 % from one pair to the next.</summary>
/// <param name="Combustion">Where fuel, air and products begin and end.</param>
/// <param name="Volume">Conditions of the cubic metre.</param>
public sealed record GasReference(ReferenceTemperature Combustion, BaseConditions Volume)
{
    /// <summary>Burning and volume at 15 °C, 101.325 kPa. Source: ISO 13443.</summary>
    public static GasReference Iso13443 { get; } = new(ReferenceTemperature.Celsius15, BaseConditions.Iso13443);

    /// <summary>Burning and volume at 60 °F, 14.73 psia.</summary>
    public static GasReference Us { get; } = new(ReferenceTemperature.Fahrenheit60, BaseConditions.Us);

    /// <summary>Burning at 25 °C, volume at 0 °C, 101.325 kPa: the pair that goes with "normal" cubic metres. Source: ISO 6976:2016, Annex D.</summary>
    public static GasReference Normal { get; } = new(ReferenceTemperature.Celsius25, BaseConditions.Normal);

    /// <summary>The pair that is usual where volumes are counted at these conditions.</summary>
    public static GasReference For(BaseConditions volume) =>
        volume == BaseConditions.Normal ? Normal : new GasReference(ReferenceTemperatures.Of(volume), volume);
}
