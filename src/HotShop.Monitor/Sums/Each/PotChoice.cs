using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Physics.Pot;

namespace HotShop.Monitor.Sums.Each;

/// <summary>The studio's pots, and one described on the spot: what several sums ask first.</summary>
sealed class PotChoice(StudioPlan plan, PotBook pots)
{
    public const string Name = "pot", Other = "other";

    const string Diameter = "diameter", Height = "height";

    public ChoiceField Field(string other) => new(Name, "Pot", [.. pots.Pots.Select(p => new SumChoice(p.Appliance, plan.Appliance(p.Appliance)!.Name)), new SumChoice(Other, other)]);

    /// <summary>Inside of another pot, straight on a flat bottom.</summary>
    public static IEnumerable<SumField> Inside =>
    [
        new NumberField(Diameter, "Inner diameter", Measure.Length, 5, 200, 40) { When = new(Name, Other) },
        new NumberField(Height, "Inner height", Measure.Length, 5, 200, 45) { When = new(Name, Other) },
    ];

    /// <returns>The pot as configured; null for another.</returns>
    public static PotPlan? Chosen(SumInput input, PotBook pots) => pots.Find(input.Choice(Name));

    public static GlassMass Described(double diameterCentimetres, double heightCentimetres) => new(new CylinderPot(diameterCentimetres / 200, heightCentimetres / 100));

    public static Doubt DiameterOf(SumInput input) => input[Diameter];

    public static Doubt HeightOf(SumInput input) => input[Height];
}
