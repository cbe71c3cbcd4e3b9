namespace HotShop.Physics.Glass;

/// <summary>Properties of a glass, by which curves, levels and heat are judged. No figure here is a constant of the trade: annealing
/// points differ by 90 °C among furnace glasses. The maker's data sheet knows better.</summary>
public sealed record GlassProfile
{
    static readonly Lazy<GlassProfileTable> Table = new(() => EmbeddedJson.Read<GlassProfileTable>("Glass.glass-profiles.json"));
    static readonly Lazy<IReadOnlyDictionary<string, GlassProfile>> Shipped = new(() => Table.Value.Profiles.ToDictionary(p => p.Key, p => p.Value.Profile()));

    /// <summary>As shown to people.</summary>
    public required string Name { get; init; }

    public required GlassComposition Composition { get; init; }

    public required ViscosityCurve Viscosity { get; init; }

    /// <summary>At 20 °C, kg/m³.</summary>
    public required double ColdKilogramsPerCubicMetre { get; init; }

    /// <summary>Linear, 20 to 300 °C, 1/K; <see langword="null"/> where not known.</summary>
    public double? ExpansionPerKelvin { get; init; }

    /// <summary>Young's modulus, GPa; <see langword="null"/> where not known.</summary>
    public double? YoungGigapascals { get; init; }

    public double? PoissonRatio { get; init; }

    /// <summary>Optical retardation per thickness and stress, 1/TPa: 2.6 is 26 nm per cm and MPa; <see langword="null"/> where not known.</summary>
    public double? StressOpticalPerTerapascal { get; init; }

    /// <summary>Heat of the reactions of its batch, kJ per kg of glass. Source: EU reference document on glass manufacture (2001,
    /// 2013), from memory.</summary>
    public required double BatchReactionKilojoulesPerKilogram { get; init; }

    /// <summary>Heat carried off by the gases of its batch, kJ per kg of glass; an order of magnitude for a studio's temperatures.
    /// Source: as above, lowered by a third.</summary>
    public required double BatchGasesKilojoulesPerKilogram { get; init; }

    /// <summary>Where the figures come from.</summary>
    public required string Source { get; init; }

    /// <summary>The glasses that travel with the library, by id.</summary>
    public static IReadOnlyDictionary<string, GlassProfile> All => Shipped.Value;

    /// <summary>A soft soda-lime as studios use: annealing point 495 °C.</summary>
    public static GlassProfile SoftStudioSodaLime => All["soft-studio-soda-lime"];

    /// <summary>Harder soda-lime of windows and containers: annealing point near 550 °C.</summary>
    public static GlassProfile WindowSodaLime => All["window-soda-lime"];

    /// <summary>Crystal with 28 % lead oxide: annealing point near 465 °C.</summary>
    public static GlassProfile LeadCrystal => All["lead-crystal"];

    /// <summary>Laboratory glass to ISO 3585: annealing point near 560 °C.</summary>
    public static GlassProfile Borosilicate33 => All["borosilicate-3.3"];

    /// <summary>Viscosity 10^2 dPa·s, °C.</summary>
    public double MeltingPointCelsius => Viscosity.CelsiusAt(FixedPoints.Melting);

    /// <summary>10^4 dPa·s, °C.</summary>
    public double WorkingPointCelsius => Viscosity.CelsiusAt(FixedPoints.Working);

    /// <summary>10^7.6 dPa·s, °C.</summary>
    public double SofteningPointCelsius => Viscosity.CelsiusAt(FixedPoints.Softening);

    /// <summary>10^13 dPa·s: stress leaves in minutes, °C.</summary>
    public double AnnealingPointCelsius => Viscosity.CelsiusAt(FixedPoints.Annealing);

    /// <summary>10^14.5 dPa·s: below it cooling adds hardly any lasting stress, °C.</summary>
    public double StrainPointCelsius => Viscosity.CelsiusAt(FixedPoints.Strain);

    /// <summary>Its heat content; of a glass that <see cref="GlassHeat.Knows"/> says yes to.</summary>
    public GlassHeat Heat => new(Composition);

    /// <summary>Density of the melt, kg/m³: from the volumes of its oxides where all are known (± 1.5 %), else the cold density less
    /// what window glass loses on the way (± 3 %).</summary>
    /// <param name="celsius">A temperature at which it flows.</param>
    public double MeltKilogramsPerCubicMetre(double celsius) => MeltVolume.Knows(Composition)
        ? MeltVolume.KilogramsPerCubicMetre(Composition, celsius)
        : ColdKilogramsPerCubicMetre * WindowMeltToCold(celsius);

    /// <summary>Density of a cold glass whose maker does not state it, kg/m³: its melt's, plus what window glass gains on the way (± 3 %).</summary>
    /// <param name="glass">One that <see cref="MeltVolume.Knows"/> says yes to.</param>
    /// <param name="meltCelsius">A temperature at which it flows.</param>
    public static double ColdOf(GlassComposition glass, double meltCelsius) => MeltVolume.KilogramsPerCubicMetre(glass, meltCelsius) / WindowMeltToCold(meltCelsius);

    static double WindowMeltToCold(double celsius) =>
        MeltVolume.KilogramsPerCubicMetre(WindowSodaLime.Composition, celsius) / WindowSodaLime.ColdKilogramsPerCubicMetre;

    /// <summary>Heat to melt, kJ per kg of glass.</summary>
    /// <param name="fromCelsius">Of the charge, °C.</param>
    /// <param name="toCelsius">Of the melt, °C.</param>
    /// <param name="batchShare">Of the glass, 0 to 1: what comes from batch rather than cullet.</param>
    public double MeltingKilojoulesPerKilogram(double fromCelsius, double toCelsius, double batchShare) =>
        Heat.BetweenKilojoulesPerKilogram(fromCelsius, toCelsius)
        + Require.Share(batchShare) * (BatchReactionKilojoulesPerKilogram + BatchGasesKilojoulesPerKilogram);
}

/// <summary>The stored table of glasses.</summary>
internal sealed record GlassProfileTable(string Source, string Licence, Dictionary<string, GlassProfileRow> Profiles);

/// <param name="ViscosityPascalSeconds">Constants measured; left out where the composition says them.</param>
internal sealed record GlassProfileRow(
    string Name, Dictionary<Oxide, double> WeightPercent, CurveRow? ViscosityPascalSeconds, double ColdKilogramsPerCubicMetre, double ExpansionPerKelvin,
    double YoungGigapascals, double PoissonRatio, double StressOpticalPerTerapascal, double BatchReactionKilojoulesPerKilogram, double BatchGasesKilojoulesPerKilogram, string Source)
{
    public GlassProfile Profile()
    {
        var composition = GlassComposition.OfWeights(WeightPercent);
        return new()
        {
            Name = Name,
            Composition = composition,
            Viscosity = ViscosityPascalSeconds is { } row ? ViscosityCurve.OfPascalSeconds(row.A, row.BKelvin, row.T0Celsius) : ((ViscosityAnswer.Known)ViscosityModel.Fluegel2007.Of(composition)).Curve,
            ColdKilogramsPerCubicMetre = ColdKilogramsPerCubicMetre,
            ExpansionPerKelvin = ExpansionPerKelvin,
            YoungGigapascals = YoungGigapascals,
            PoissonRatio = PoissonRatio,
            StressOpticalPerTerapascal = StressOpticalPerTerapascal,
            BatchReactionKilojoulesPerKilogram = BatchReactionKilojoulesPerKilogram,
            BatchGasesKilojoulesPerKilogram = BatchGasesKilojoulesPerKilogram,
            Source = Source,
        };
    }
}

internal sealed record CurveRow(double A, double BKelvin, double T0Celsius);
