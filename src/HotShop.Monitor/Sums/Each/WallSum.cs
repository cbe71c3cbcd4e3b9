using HotShop.Physics.FurnaceHeat;

namespace HotShop.Monitor.Sums.Each;

sealed class WallSum : Sum
{
    const string Area = "area", Inside = "inside", Room = "room", Skin = "skin";

    const int Layers = 3;

    /// <summary>Conductivities of brick and blanket in place differ so much from the sheet's. Common practice; ASTM's round robins of refractory boards scatter by 8 %.</summary>
    const double Conductivity = 0.15;

    public override string Id => "wall";
    public override string Title => "Heat through a furnace wall";
    public override string Group => SumGroups.Heat;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new NumberField(Inside, "Hot face", Measure.Temperature, 50, 1500, 1150),
        new NumberField(Room, "Room", Measure.Temperature, -10, 60, 25),
        new NumberField(Area, "Area of the wall", Measure.Area, 0.01, 200, 1),
        .. Enumerable.Range(1, Layers).SelectMany(Layer),
        new NumberField(Skin, "Emissivity of the skin", Measure.Count, 0.05, 1, 0.9) { Hint = "Near 1 painted or rusty, about a third bright metal." },
    ];

    static IEnumerable<SumField> Layer(int place) =>
    [
        new NumberField(Thickness(place), place == 1 ? "Layer 1, on the hot side" : $"Layer {place}", Measure.Length, 0, 100, place switch { 1 => 11.5, 2 => 10, _ => null })
            { Usual = ("mm", "in"), Hint = place == 1 ? null : "Left out: no such layer.", MayBeEmpty = place > 1 },
        new NumberField(Conducts(place), $"Layer {place} conducts", Measure.Conductivity, 0.01, 100, place switch { 1 => 0.35, 2 => 0.20, _ => null })
            { Hint = place == 1 ? "From its data sheet, at about the temperature of its middle." : null, MayBeEmpty = place > 1 },
    ];

    static string Thickness(int place) => $"layer{place}";

    static string Conducts(int place) => $"conducts{place}";

    public override string Method => "Heat goes through the layers as much as leaves the skin by convection and radiation; the skin's temperature is where both are the same.";
    public override string Source => "Fourier's law; convection by the formula of Oak Ridge National Laboratory for walls of process heating, radiation by Stefan-Boltzmann.";
    public override string Range => "A flat upright wall at rest in a still room. Edges, anchors and cracks come on top. Conductivities are taken as good to 15 % (common practice).";
    public override string Caution => "A skin can burn, and a hot one may tell of a worn lining. Do not cover a casing that is built to breathe. Whoever changes a lining or a casing follows the maker, the local code and licensed people, with certified limits in place.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var layers = Enumerable.Range(1, Layers).Select(p => (Place: p, Thickness: input.Find(Thickness(p)), Conducts: input.Find(Conducts(p)))).ToList();
        foreach (var (place, thickness, conducts) in layers)
        {
            if (thickness is { Value: > 0 } && conducts is null) return SumAnswer.Refused(Conducts(place), "write how well this layer conducts");
            if (thickness is null or { Value: 0 } && conducts is not null && place > 2) return SumAnswer.Refused(Thickness(place), "write how thick this layer is");
        }
        var there = layers.Where(l => l.Thickness is { Value: > 0 }).ToList();
        if (there.Count == 0) return SumAnswer.Refused(Thickness(1), "write how thick the wall is");
        if (input[Inside] <= input[Room] + 1) return SumAnswer.Refused(Inside, "the hot face must be hotter than the room");

        WallHeat Heat(IReadOnlyList<double> v) =>
            new FurnaceWall([.. there.Select((_, i) => WallLayer.Constant(v[2 * i] / 100, v[2 * i + 1]))]).InRoom(v[^3], v[^2], new ShellSurface.Bare(v[^1]));
        Doubt[] numbers = [.. there.SelectMany(l => new[] { l.Thickness! with { Least = 0.001 }, InPlace(l.Conducts!) }), input[Inside], input[Room], input[Skin]];
        var flux = Doubt.Of(v => Heat(v).WattsPerSquareMetre, numbers);
        var whole = Doubt.Of(v => v[^1] * Heat([.. v.SkipLast(1)]).WattsPerSquareMetre / 1000, [.. numbers, input[Area]]);
        var faces = Heat([.. numbers.Select(n => n.Value)]).FaceCelsius;
        return SumAnswer.Of(
        [
            SumFigure.Of("loss", "Through the wall", Measure.Power, whole),
            SumFigure.Of("flux", "Through each square metre", Measure.Flux, flux),
            SumFigure.Of("skin", "Skin", Measure.Temperature, Doubt.Of(v => Heat(v).ShellCelsius, numbers), isSigned: true),
            .. faces.Skip(1).SkipLast(1).Select((celsius, i) => SumFigure.Beside($"between{there[i].Place}And{there[i + 1].Place}", $"Between layers {there[i].Place} and {there[i + 1].Place}", Measure.Temperature, celsius)),
        ]);
    }

    static Doubt InPlace(Doubt conducts) => conducts with { HalfWidth = Math.Max(conducts.HalfWidth, Conductivity * conducts.Value) };
}
