using HotShop.Physics.Glass;

namespace HotShop.Monitor.Sums.Each;

/// <summary>The choice of a glass.</summary>
static class GlassField
{
    public const string Name = "kind";

    public static ChoiceField Field { get; } = new(Name, "Glass", [.. GlassProfile.All.Select(g => new SumChoice(g.Key, g.Value.Name))]);

    /// <summary>Those whose heat content is known.</summary>
    public static ChoiceField WithHeat { get; } = new(Name, "Glass", [.. GlassProfile.All.Where(g => GlassHeat.Knows(g.Value.Composition)).Select(g => new SumChoice(g.Key, g.Value.Name))]);

    public static GlassProfile Of(SumInput input) => GlassProfile.All[input.Choice(Name)];
}
