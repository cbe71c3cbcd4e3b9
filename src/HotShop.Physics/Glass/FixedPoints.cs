namespace HotShop.Physics.Glass;

/// <summary>The viscosities that have names, as log10 of dPa·s. A point measured by its own test (ASTM C336, C338, C598) may lie
/// up to 10 °C from the temperature at which the viscosity curve has its value.</summary>
public static class FixedPoints
{
    /// <summary>Batch dissolves and seeds rise (ISO 7884-2).</summary>
    public const double Melting = 2;

    /// <summary>In the middle of gathering and blowing (ISO 7884-2).</summary>
    public const double Working = 4;

    /// <summary>Slumps under its own weight: the Littleton point (ISO 7884-3, ASTM C338).</summary>
    public const double Softening = 7.6;

    /// <summary>Stress leaves in minutes (ISO 7884-4, ASTM C336).</summary>
    public const double Annealing = 13;

    /// <summary>Stress leaves in hours; below it cooling adds hardly any lasting stress (ASTM C336, C598).</summary>
    public const double Strain = 14.5;
}
