using HotShop.Monitor.Configuration;
using HotShop.Physics.Glass;
using HotShop.Physics.Pot;

namespace HotShop.Monitor.Pot;

/// <summary>A pot as configured: its inside, its glass, its heel and what a gather of each size weighs.</summary>
/// <param name="Recipe">Of the studio's batch; null where none is configured.</param>
public sealed record PotPlan(string Appliance, GlassMass Glass, GlassProfile Profile, BatchRecipe? Recipe, PotOptions Options)
{
    public static PotPlan? Of(AppliancePlan appliance) => appliance.Options.Pot is { } options
        ? new PotPlan(appliance.Id, new GlassMass(Geometry(options), GlassChoice.MeltKilogramsPerCubicMetre(options)), GlassChoice.Of(options), GlassChoice.Recipe(options), options) : null;

    /// <summary>Whether the studio says what a material leaves: its yield or its recipe.</summary>
    public bool SaysYieldOf(ChargeMaterial material) =>
        Options.GlassYields.Keys.Contains(material.Name, StringComparer.OrdinalIgnoreCase) || (material.NeedsReaction && Recipe is not null);

    /// <summary>A material with the yield that the studio says, else the usual.</summary>
    public ChargeMaterial Yielding(ChargeMaterial material)
    {
        foreach (var (name, share) in Options.GlassYields)
            if (string.Equals(name, material.Name, StringComparison.OrdinalIgnoreCase)) return material with { GlassYield = share };
        return material.NeedsReaction && Recipe is { } recipe ? material with { GlassYield = recipe.Yield } : material;
    }

    static CrucibleGeometry Geometry(PotOptions pot)
    {
        double radius = pot.DiameterCentimetres / 200, height = pot.HeightCentimetres / 100;
        return pot.Shape switch
        {
            "cone" => new TaperedPot(pot.BottomDiameterCentimetres!.Value / 200, radius, height),
            "rounded" => new RoundedPot(radius, pot.CornerRadiusCentimetres!.Value / 100, height),
            _ => new CylinderPot(radius, height),
        };
    }
}
