namespace HotShop.Physics.Combustion;

/// <summary>Air as burners get it, taken as dry: oxygen, and the rest counted as nitrogen.</summary>
/// <remarks>Argon, 0.93 % of air, holds less heat than the nitrogen it is counted as: the flue gas of a furnace holds about 0.3 % less. Moist air of 20 °C and 50 % is 1.2 % water
/// vapour and takes about 0.6 points of the gross heat at 1150 °C.</remarks>
public static class DryAir
{
    /// <summary>Oxygen, mole fraction. Source: dry air of the atmosphere, 20.946 % (NASA's Earth fact sheet prints 20.95 %; the third digit from memory).</summary>
    public const double OxygenFraction = 0.20946;

    /// <summary>Moles of the rest for a mole of oxygen.</summary>
    public const double NitrogenPerOxygen = (1 - OxygenFraction) / OxygenFraction;
}
