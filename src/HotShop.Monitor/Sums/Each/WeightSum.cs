using HotShop.Physics.Glass;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums.Each;

sealed class WeightSum : Sum
{
    const string Shape = "shape", Diameter = "diameter", Height = "height", Top = "top", Wall = "wall", State = "state", Hot = "hot";
    const string Ball = "ball", Rod = "cylinder", Cone = "cone", Dome = "dome", Blown = "blown-ball", Bowl = "bowl", Tumbler = "tumbler";

    /// <summary>Density of a glass of which the profile alone is known, and of a melt; limits, shares.</summary>
    const double ColdDensity = 0.02, MeltDensity = GlassBudgets.DensityPercent / 100;

    /// <summary>Temperature of a gather, where the volume of the melt is taken. Common practice.</summary>
    const double GatherCelsius = 1150;

    public override string Id => "weight";
    public override string Title => "Weight of a piece or a gather";
    public override string Group => SumGroups.Glass;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new ChoiceField(Shape, "Shape",
        [
            new(Ball, "solid ball"), new(Rod, "solid rod, slab or disc"), new(Cone, "solid cone"), new(Dome, "paperweight: a cap on a flat base"),
            new(Blown, "blown ball"), new(Bowl, "bowl: half a blown ball"), new(Tumbler, "tumbler: straight wall and bottom"),
        ]),
        new NumberField(Diameter, "Diameter outside", Measure.Length, 0.2, 200, 7.3) { Hint = "Of a cone and a paperweight: at the base." },
        new NumberField(Height, "Height", Measure.Length, 0.2, 200, 10) { When = new(Shape, Rod, Cone, Dome, Tumbler) },
        new NumberField(Top, "Diameter at the top", Measure.Length, 0, 200, 0) { When = new(Shape, Cone) },
        new NumberField(Wall, "Wall", Measure.Length, 0.02, 100, 0.4) { When = new(Shape, Blown, Bowl, Tumbler), Usual = ("mm", "in") },
        GlassField.Field,
        new ChoiceField(State, "It is", [new("cold", "cold"), new(Hot, "hot, on the pipe")]),
    ];

    public override string Method => "Volume of the shape times the density of the glass: cold, or of the melt at 1150 °C (2100 °F) for a gather.";
    public override string Source => "Solid geometry; densities of the glass's profile (docs/glass.md).";
    public override string Range => "Even walls, no bubbles. The interval holds what was typed and 2 % of the cold density or 1.5 % of the melt's; a piece is never quite the shape.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var (shape, glass) = (input.Choice(Shape), GlassField.Of(input));
        var isHot = input.Choice(State) == Hot;
        if (shape is Blown or Bowl or Tumbler && input[Wall] * 2 > input[Diameter]) return SumAnswer.Refused(Wall, "the wall is thicker than half of the piece");
        if (shape == Tumbler && input[Wall] > input[Height]) return SumAnswer.Refused(Wall, "the bottom is taken as thick as the wall, and that is more than the height");
        var density = isHot ? glass.MeltKilogramsPerCubicMetre(GatherCelsius) : glass.ColdKilogramsPerCubicMetre;
        Doubt[] sizes = [input[Diameter], Used(Height, Rod, Cone, Dome, Tumbler), Used(Top, Cone), Used(Wall, Blown, Bowl, Tumbler)];
        double Kilograms(IReadOnlyList<double> v) => Piece(shape, v[0] / 100, v[1] / 100, v[2] / 100, Math.Min(v[3], v[0] / 2) / 100).Kilograms(density) * v[4];
        var mass = Doubt.Of(Kilograms, [.. sizes, Doubt.Factor("density", isHot ? MeltDensity : ColdDensity)]);
        return SumAnswer.Of(
            SumFigure.Of("mass", "Weight", Measure.Mass, mass),
            SumFigure.Beside("ball", "A solid ball of as much glass measures", Measure.Length, 100 * PieceShape.Ball.OfKilograms(mass.Value, density).DiameterMetres));

        Doubt Used(string field, params ReadOnlySpan<string> shapes) => shapes.Contains(shape) ? input[field] : new(field, 1, 0);
    }

    static PieceShape Piece(string shape, double diameter, double height, double top, double wall) => shape switch
    {
        Rod => new PieceShape.Cylinder(diameter, height),
        Cone => new PieceShape.Cone(diameter, top, height),
        Dome => new PieceShape.Dome(diameter, height),
        Blown => new PieceShape.BlownBall(diameter, wall),
        Bowl => new PieceShape.Bowl(diameter, wall),
        Tumbler => new PieceShape.Tumbler(diameter, height, wall, wall),
        _ => new PieceShape.Ball(diameter),
    };
}
