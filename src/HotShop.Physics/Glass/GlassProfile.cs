namespace HotShop.Physics.Glass;

/// <summary>Properties of a glass, by which curves and levels are judged. The annealing point is never a constant of the trade:
/// glasses differ by 65 °C.</summary>
/// <param name="Name">As shown to people.</param>
/// <param name="WorkingPointCelsius">Viscosity 10^4 dPa·s, °C.</param>
/// <param name="SofteningPointCelsius">10^7.6 dPa·s, °C.</param>
/// <param name="AnnealingPointCelsius">10^13 dPa·s: stress leaves in minutes, °C.</param>
/// <param name="StrainPointCelsius">10^14.5 dPa·s: below it cooling adds hardly any lasting stress, °C.</param>
/// <param name="DensityKilogramsPerCubicMetre">At 20 °C, kg/m³.</param>
/// <param name="ExpansionPerKelvin">Linear, 20 to 300 °C, 1/K.</param>
/// <param name="Source">Where the figures come from.</param>
public sealed record GlassProfile(
    string Name,
    double WorkingPointCelsius,
    double SofteningPointCelsius,
    double AnnealingPointCelsius,
    double StrainPointCelsius,
    double DensityKilogramsPerCubicMetre,
    double ExpansionPerKelvin,
    string Source)
{
    static readonly Lazy<GlassProfileTable> Table = new(() => EmbeddedJson.Read<GlassProfileTable>("Glass.glass-profiles.json"));

    /// <summary>A soft soda-lime as studios use: annealing point 495 °C.</summary>
    public static GlassProfile SoftStudioSodaLime { get; } = Table.Value.Profiles["soft-studio-soda-lime"];

    /// <summary>Harder soda-lime of windows and containers: annealing point 545 °C.</summary>
    public static GlassProfile WindowSodaLime { get; } = Table.Value.Profiles["window-soda-lime"];
}

/// <summary>The stored table of glasses.</summary>
internal sealed record GlassProfileTable(string Source, string Licence, Dictionary<string, GlassProfile> Profiles);
