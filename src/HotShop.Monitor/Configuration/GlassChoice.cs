using System.Globalization;
using HotShop.Physics.Glass;

namespace HotShop.Monitor.Configuration;

/// <summary>From what is written about a glass to its properties, and what is wrong with what is written. Pure.</summary>
public static class GlassChoice
{
    /// <summary>Weight percents on data sheets are rounded, and traces left out.</summary>
    const double LeastPercent = 97, MostPercent = 103;

    /// <summary>The glass of a pot.</summary>
    /// <param name="pot">Without problems after <see cref="ConfigurationCheck"/>.</param>
    public static GlassProfile Of(PotOptions pot)
    {
        var options = pot.Glass ?? new GlassOptions();
        var known = options.WeightPercent.Count > 0 ? Own(options) : GlassProfile.All.GetValueOrDefault(options.Profile ?? "") ?? GlassProfile.SoftStudioSodaLime;
        var named = options.Name is { } name ? known with { Name = name } : known;
        var weighed = options.ColdKilogramsPerCubicMetre is { } cold ? named with { ColdKilogramsPerCubicMetre = cold } : named;
        return Measured(options) is { } curve ? weighed with { Viscosity = curve, Source = $"{weighed.Source} Viscosity through the maker's three points." } : weighed;
    }

    /// <summary>Density of the melt when its depth is measured, kg/m³.</summary>
    public static double MeltKilogramsPerCubicMetre(PotOptions pot) =>
        pot.Glass?.MeltKilogramsPerCubicMetre ?? Of(pot).MeltKilogramsPerCubicMetre((pot.Glass ?? new GlassOptions()).DippedCelsius);

    /// <summary>The recipe of the studio's batch; null where none is written.</summary>
    public static BatchRecipe? Recipe(PotOptions pot) =>
        pot.BatchRecipe.Count > 0 ? new BatchRecipe(pot.BatchRecipe.ToDictionary(m => RawMaterial.Named(m.Key)!, m => m.Value)) : null;

    internal static void Check(ProblemList found, string where, PotOptions pot)
    {
        if (pot.Glass is { } glass) Check(found, $"{where}.glass", glass);
        foreach (var (material, parts) in pot.BatchRecipe)
        {
            if (RawMaterial.Named(material) is null)
                found.Add($"{where}.batchRecipe", $"'{material}' is no raw material known here", $"write one of {string.Join(", ", RawMaterial.All.Select(m => m.Name))}; cullet belongs to the charge");
            found.Range($"{where}.batchRecipe.{material}", parts, 0.001, 10_000);
        }
        if (pot.BatchRecipe.Keys.GroupBy(k => k, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice)
            found.Add($"{where}.batchRecipe", $"'{twice.Key}' is there twice", "add them up");
        if (pot.BatchRecipe.Count > 0 && pot.GlassYields.Keys.Contains("batch", StringComparer.OrdinalIgnoreCase))
            found.Add($"{where}.batchRecipe", "the yield of batch is written as well", "leave out one of batchRecipe and glassYields.batch");
    }

    static void Check(ProblemList found, string where, GlassOptions glass)
    {
        if (glass.Profile is { } profile && !GlassProfile.All.ContainsKey(profile))
            found.Add($"{where}.profile", $"'{profile}' is no glass known here", $"write one of {string.Join(", ", GlassProfile.All.Keys)}, or weightPercent for your own");
        if (glass.Profile is not null && glass.WeightPercent.Count > 0)
            found.Add($"{where}.weightPercent", "a profile is named as well", "leave out one of profile and weightPercent");
        found.Range($"{where}.dippedCelsius", glass.DippedCelsius, 900, 1400);
        if (glass.MeltKilogramsPerCubicMetre is { } melt) found.Range($"{where}.meltKilogramsPerCubicMetre", melt, 1900, 4500);
        if (glass.ColdKilogramsPerCubicMetre is { } cold) found.Range($"{where}.coldKilogramsPerCubicMetre", cold, 2000, 5000);
        Points(found, where, glass);
        if (glass.WeightPercent.Count > 0) Composition(found, $"{where}.weightPercent", glass);
    }

    static void Points(ProblemList found, string where, GlassOptions glass)
    {
        double?[] points = [glass.WorkingPointCelsius, glass.SofteningPointCelsius, glass.AnnealingPointCelsius];
        if (points.All(p => p is null)) return;
        if (points.Any(p => p is null))
            found.Add($"{where}.annealingPointCelsius", "of working, softening and annealing point some are missing", "write all three, or none to have them computed");
        else if (Measured(glass) is null || glass.AnnealingPointCelsius is not (>= 300 and <= 800) || glass.WorkingPointCelsius is not <= 1500)
            found.Add($"{where}.annealingPointCelsius", "no glass has these three points", "write them in °C; usual are 950, 660 and 495");
    }

    static void Composition(ProblemList found, string where, GlassOptions glass)
    {
        var slips = glass.WeightPercent.Where(w => OxideOf(w.Key) is null || !(w.Value is >= 0 and <= 100)).ToList();
        foreach (var (oxide, percent) in slips)
            if (OxideOf(oxide) is null) found.Add($"{where}.{oxide}", $"'{oxide}' is no oxide known here", $"write one of {string.Join(", ", Enum.GetNames<Oxide>())}; leave traces out");
            else found.Range($"{where}.{oxide}", percent, 0, 100);
        if (slips.Count > 0) return;
        var sum = glass.WeightPercent.Values.Sum();
        if (sum is < LeastPercent or > MostPercent)
        {
            found.Add(where, string.Create(CultureInfo.InvariantCulture, $"the oxides add up to {sum:0.#} %"), "write weight percent of each oxide; together they make 100");
            return;
        }
        var composition = CompositionOf(glass);
        if (Measured(glass) is null && ViscosityModel.Fluegel2007.Of(composition) is ViscosityAnswer.OutOfRange(var reason))
            found.Add(where, $"its viscosity cannot be computed: {reason}", "write the maker's workingPointCelsius, softeningPointCelsius and annealingPointCelsius");
        if (!GlassHeat.Knows(composition))
            found.Add(where, "more than 5 % are oxides of which the heat is not known", $"choose the profile that is nearest: {string.Join(", ", GlassProfile.All.Keys)}");
        if (!MeltVolume.Knows(composition) && glass.ColdKilogramsPerCubicMetre is null)
            found.Add(where, "the density of its melt cannot be computed from these oxides alone", "write the maker's density as coldKilogramsPerCubicMetre");
    }

    static GlassProfile Own(GlassOptions glass)
    {
        var composition = CompositionOf(glass);
        var (curve, window) = (Measured(glass) ?? (ViscosityModel.Fluegel2007.Of(composition) as ViscosityAnswer.Known)?.Curve, GlassProfile.WindowSodaLime);
        return new GlassProfile
        {
            Name = "own glass",
            Composition = composition,
            Viscosity = curve ?? throw new ArgumentException("unchecked composition of a glass", nameof(glass)),
            ColdKilogramsPerCubicMetre = glass.ColdKilogramsPerCubicMetre ?? GlassProfile.ColdOf(composition, glass.DippedCelsius),
            BatchReactionKilojoulesPerKilogram = window.BatchReactionKilojoulesPerKilogram,
            BatchGasesKilojoulesPerKilogram = window.BatchGasesKilojoulesPerKilogram,
            Source = "Composition as configured; viscosity by the model of Fluegel 2007; heat of batch as soda-lime.",
        };
    }

    static ViscosityCurve? Measured(GlassOptions glass) =>
        glass is { WorkingPointCelsius: { } working, SofteningPointCelsius: { } softening, AnnealingPointCelsius: { } annealing }
            ? ViscosityCurve.ThroughOrNull(new(FixedPoints.Working, working), new(FixedPoints.Softening, softening), new(FixedPoints.Annealing, annealing)) : null;

    static GlassComposition CompositionOf(GlassOptions glass) => GlassComposition.OfWeights(glass.WeightPercent.ToDictionary(w => OxideOf(w.Key)!.Value, w => w.Value));

    static Oxide? OxideOf(string name) => Enum.TryParse<Oxide>(name, ignoreCase: false, out var oxide) && Enum.IsDefined(oxide) && oxide.ToString() == name ? oxide : null;
}
