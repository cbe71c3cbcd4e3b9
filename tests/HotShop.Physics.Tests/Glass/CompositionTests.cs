using FsCheck.Xunit;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class CompositionTests
{
    [Property]
    public bool Weights_to_moles_and_back_are_the_same_weights(byte[] parts)
    {
        var weights = Enum.GetValues<Oxide>().Zip(parts).ToDictionary(p => p.First, p => (double)p.Second);
        if (weights.Values.Sum() == 0) return true;
        var glass = GlassComposition.OfWeights(weights);
        var back = GlassComposition.OfMoles(glass.MolePercent);
        return Math.Abs(glass.WeightPercent.Values.Sum() - 100) < 1e-9 && Math.Abs(glass.MolePercent.Values.Sum() - 100) < 1e-9
            && glass.WeightPercent.All(w => Math.Abs(back.WeightPercent[w.Key] - w.Value) < 1e-9);
    }

    [Fact]
    public void A_mole_weighs_what_its_oxides_weigh() =>
        // SiO2 60.083 and Na2O 61.979 g/mol, half each.
        Assert.Equal(61.031, GlassComposition.OfMoles(new Dictionary<Oxide, double> { [Oxide.SiO2] = 3, [Oxide.Na2O] = 3 }).GramsPerMole, 0.001);

    [Fact]
    public void Oxides_left_out_are_counted_and_the_rest_scaled()
    {
        var glass = GlassComposition.OfWeights(new Dictionary<Oxide, double> { [Oxide.SiO2] = 70, [Oxide.Na2O] = 20, [Oxide.BaO] = 10 });
        Assert.Equal(10, glass.WeightPercentBeside([Oxide.SiO2, Oxide.Na2O]), 1e-9);
        Assert.Equal(70 / 0.9, glass.Only([Oxide.SiO2, Oxide.Na2O]).WeightPercent[Oxide.SiO2], 1e-9);
    }

    [Fact]
    public void Nothing_and_less_than_nothing_are_no_glass()
    {
        Assert.Throws<ArgumentException>(() => GlassComposition.OfWeights(new Dictionary<Oxide, double> { [Oxide.SiO2] = 0 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => GlassComposition.OfMoles(new Dictionary<Oxide, double> { [Oxide.SiO2] = -1 }));
        Assert.Throws<ArgumentOutOfRangeException>(() => GlassComposition.OfMoles(new Dictionary<Oxide, double> { [Oxide.SiO2] = double.NaN }));
    }

    [Theory]
    [InlineData("Ca(OH)2", "CaOOHH")]
    [InlineData("CaMg(CO3)2", "CaCO3MgCO3")]
    [InlineData("Na2B4O7(H2O)10", "Na2B4O7H20O10")]
    public void A_bracket_counts_as_often_as_it_says(string formula, string spelledOut) =>
        Assert.Equal(ChemicalFormula.GramsPerMole(spelledOut), ChemicalFormula.GramsPerMole(formula), 1e-9);

    [Theory, InlineData(""), InlineData("Xx2O"), InlineData("Ca(OH"), InlineData("SiO2)"), InlineData("2H"), InlineData("Na2-O")]
    public void What_is_no_formula_is_refused(string text) => Assert.Throws<FormatException>(() => ChemicalFormula.GramsPerMole(text));
}
