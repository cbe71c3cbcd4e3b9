using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums.Each;

sealed class DipSum(StudioPlan plan, PotBook pots) : Sum
{
    const string Read = "read", Depth = "depth", Distance = "distance";

    /// <summary>A rod in a hot pot is read so well at best, cm either way. Common practice.</summary>
    const double RodCentimetres = 0.5;

    public override string Id => "dip";
    public override string Title => "A dip to kilograms of glass";
    public override string Group => SumGroups.Pot;

    public override IReadOnlyList<SumField> Fields =>
    [
        new PotChoice(plan, pots).Field("another, as typed below"),
        .. PotChoice.Inside,
        new ChoiceField(Read, "Measured", [new(Depth, "depth of glass"), new("rim", "from the rim down to the glass")]),
        new NumberField(Distance, "Reading", Measure.Length, 0, 200, 20),
    ];

    public override string Method => "Volume of the pot below the glass times the density of the melt.";
    public override string Source => "Solid geometry of the configured inside; density of the melt after Lange 1997 (docs/pot.md).";
    public override string Range => "Clear glass: foam and seeds are a few per cent lighter. The interval holds 5 mm of the rod (common practice) and 1.5 % of density and dimensions.";
    public override string Caution => "A dip is work over open glass: face, eyes and hands protected, and only by those trained for it.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var pot = PotChoice.Chosen(input, pots);
        var isDepth = input.Choice(Read) == Depth;
        GlassMass Glass(double diameter, double height) => pot?.Glass ?? PotChoice.Described(diameter, height);
        double Kilograms(IReadOnlyList<double> v)
        {
            var glass = Glass(v[1], v[2]);
            return glass.KilogramsAtDepth(Math.Clamp(isDepth ? v[0] / 100 : glass.Geometry.HeightMetres - v[0] / 100, 0, glass.Geometry.HeightMetres));
        }

        Doubt[] inside = pot is null ? [PotChoice.DiameterOf(input), PotChoice.HeightOf(input)] : [new("diameter", 0, 0), new("height", 0, 0)];
        var whole = Glass(inside[0], inside[1]);
        if (input[Distance] / 100 > whole.Geometry.HeightMetres)
            return SumAnswer.Refused(Distance, $"the pot is {whole.Geometry.HeightMetres * 100:0.#} cm high inside: write what was read from its lowest point or from its rim");
        var reading = input[Distance] with { HalfWidth = Math.Max(RodCentimetres, input[Distance].HalfWidth) };
        var typed = Doubt.Of(Kilograms, reading, inside[0], inside[1]);
        var mass = typed.With(new Contribution("density and dimensions", typed.Value * PotHabits.Usual.DepthToMassBias));
        return SumAnswer.Of(
            SumFigure.Of("mass", "Glass", Measure.Mass, mass),
            SumFigure.Beside("freeboard", "From the glass to the rim", Measure.Length, whole.FreeboardMetres(mass.Value) * 100),
            SumFigure.Beside("full", "Of a full pot", Measure.Percent, 100 * mass.Value / whole.FullKilograms),
            SumFigure.Beside("perCentimetre", "A centimetre here is worth", Measure.Mass, whole.KilogramsPerMetre(whole.DepthMetres(mass.Value)) / 100));
    }
}
