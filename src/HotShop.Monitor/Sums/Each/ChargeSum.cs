using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums.Each;

sealed class ChargeSum : Sum
{
    const string Material = "material", Mass = "mass", Yield = "yield";

    public override string Id => "charge";
    public override string Title => "A charge to glass in the pot";
    public override string Group => SumGroups.Pot;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new ChoiceField(Material, "Charged", [.. ChargeMaterial.All.OrderByDescending(m => m == ChargeMaterial.Batch).Select(m => new SumChoice(m.Name, m.Name))]),
        new NumberField(Mass, "Weighed", Measure.Mass, 0, 2000, 20),
        new NumberField(Yield, "Glass it leaves, where the bag says", Measure.Percent, 10, 100, null) { Hint = "Left out: the usual of the material." },
    ];

    public override string Method => "Mass times the share that stays as glass; the rest of batch goes off as gas.";
    public override string Source => "Batch 85 %, cullet and frit whole: common practice; 83 and 84 % follow from the carbonates of two worked recipes.";
    public override string Range => "Soda-lime batch. A yield from the bag is better than the usual. The interval holds 1 % of the scale and 1 % of a yield that is said, 3 % of one that is not (common practice).";
    public override string Caution => "Charge as your shop is trained to: a cold or damp charge spits. Batch is dusty: breathing protection, and what the maker's safety sheet says.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var usual = ChargeMaterial.Named(input.Choice(Material))!;
        var yield = input.Find(Yield);
        var material = yield is null ? usual : usual with { GlassYield = yield / 100 };
        var typed = Doubt.Of(v => material.GlassKilograms(v[0]), input[Mass]);
        var glass = new ChargeDoubts().Glass(input[Mass], material, isYieldStated: yield is not null).With(typed.Contributions);
        return SumAnswer.Of(
            SumFigure.Of("glass", "Glass", Measure.Mass, glass),
            SumFigure.Beside("gone", "Gone as gas", Measure.Mass, input[Mass] - glass.Value),
            SumFigure.Beside("yield", "Stays", Measure.Percent, 100 * material.GlassYield));
    }
}
