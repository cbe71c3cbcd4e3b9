using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

/// <summary>The glass in a pot. Left out altogether it is soft studio soda-lime.</summary>
public sealed record GlassOptions
{
    [Description("A glass that is known: soft-studio-soda-lime, window-soda-lime, lead-crystal or borosilicate-3.3. Leave it out where you write weightPercent.")]
    public string? Profile { get; init; }

    [Description("What you call your own glass.")]
    public string? Name { get; init; }

    [Description("Your own glass: weight percent of each oxide as on the maker's sheet, e.g. { \"SiO2\": 70, \"Na2O\": 16, \"CaO\": 7, ... }. They add up to 100.")]
    public IReadOnlyDictionary<string, double> WeightPercent { get; init; } = new Dictionary<string, double>();

    [Description("Working point in °C as the maker states it. Write all three points or none: without them they are computed from the composition.")]
    public double? WorkingPointCelsius { get; init; }

    [Description("Softening point in °C as the maker states it.")]
    public double? SofteningPointCelsius { get; init; }

    [Description("Annealing point in °C as the maker states it.")]
    public double? AnnealingPointCelsius { get; init; }

    [Description("Density of the cold glass in kg/m³ as the maker states it.")]
    public double? ColdKilogramsPerCubicMetre { get; init; }

    [Description("Density of the melt in kg/m³ at dippedCelsius, where it is known; otherwise it is computed.")]
    public double? MeltKilogramsPerCubicMetre { get; init; }

    [Description("Temperature of the glass in °C when its depth is measured: its density follows.")]
    public double DippedCelsius { get; init; } = 1150;
}
