using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums.Each;

sealed class GathersSum(StudioPlan plan, PotBook pots) : Sum
{
    const string Glass = "glass", Heel = "heel", Gather = "gather", Size = "size", Weighed = "weighed";

    public override string Id => "gathers";
    public override string Title => "Gathers left in a pot";
    public override string Group => SumGroups.Pot;

    public override IReadOnlyList<SumField> Fields =>
    [
        new PotChoice(plan, pots).Field("glass as typed below"),
        new NumberField(Glass, "Glass in it", Measure.Mass, 0, 2000, 60) { When = new(PotChoice.Name, PotChoice.Other) },
        new NumberField(Heel, "Left in the bottom, not worked", Measure.Mass, 0, 500, 5) { When = new(PotChoice.Name, PotChoice.Other) },
        new ChoiceField(Size, "Gather", [.. GatherSizes.NominalKilograms.Select(g => new SumChoice(g.Key, g.Key)), new SumChoice(Weighed, "as typed below")]),
        new NumberField(Gather, "One gather weighs", Measure.Mass, 0.01, 20, 0.4) { When = new(Size, Weighed) },
    ];

    public override string Method => "Glass above the heel over the mass of a gather. Of a pot of the studio: by its own estimate now, with what dips taught of its gathers.";
    public override string Source => "Log of the pot; masses of gathers from the configuration, else common practice (0.15, 0.4 and 0.8 kg).";
    public override string Range => "Gathers of one size. Typed glass: 95 gathers in 100 are taken to weigh within two fifths of it (common practice), so the number is no better.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var size = input.Choice(Size);
        if (PotChoice.Chosen(input, pots) is not { } pot)
        {
            var nominal = size == Weighed ? input[Gather] : new Doubt("size", GatherSizes.NominalKilograms[size], 0);
            var typed = Doubt.Of(v => Math.Max(0, v[0] - v[1]) / v[2], input[Glass], input[Heel], nominal);
            var left = typed.With(new Contribution("gathers differ", typed.Value * PotHabits.Usual.GatherBias));
            return SumAnswer.Of(SumFigure.Of("gathers", "Gathers", Measure.Count, left), SumFigure.Beside("workable", "Glass above the heel", Measure.Mass, Math.Max(0, input[Glass] - input[Heel])));
        }
        var report = pots.At(pot.Appliance, asker.At)!;
        var kilograms = size == Weighed ? input[Gather].Value : pot.Options.GatherKilograms.TryGetValue(size, out var configured) ? configured : GatherSizes.NominalKilograms[size];
        var gathers = report.State.GathersLeft(size, kilograms, pot.Options.HeelKilograms);
        var state = report.State;
        return SumAnswer.Of(
            new("gathers", "Gathers", Measure.Count, Math.Max(0, gathers.Value), Math.Max(0, gathers.Low95), Math.Max(0, gathers.High95)),
            new("glass", "Glass in the pot now", Measure.Mass, state.MassKilograms, state.MassKilogramsLow95, state.MassKilogramsHigh95));
    }
}
