using HotShop.Physics.Glass;

namespace HotShop.Monitor.Sums.Each;

sealed class ViscositySum : Sum
{
    const string Celsius = "celsius";

    /// <summary>Limits, °C either way, whose standard uncertainty is the largest standard error of Fluegel 2007, 17 K; measured curves are taken as no better.</summary>
    static readonly double CurveKelvin = 17 * Math.Sqrt(3);

    /// <summary>Far below the annealing range a piece is rigid, and no curve was measured there.</summary>
    const double LeastCelsius = 400, MostCelsius = 1500;

    public override string Id => "viscosity";
    public override string Title => "How stiff a glass is at a temperature";
    public override string Group => SumGroups.Glass;

    public override IReadOnlyList<SumField> Fields { get; } = [GlassField.Field, new NumberField(Celsius, "Glass at", Measure.Temperature, LeastCelsius, MostCelsius, 1050)];

    public override string Method => "The glass's viscosity curve (Vogel, Fulcher, Tammann); its fixed points from the same curve.";
    public override string Source => "Curves of the profiles (docs/glass.md): Fluegel 2007 from the composition, or measured constants.";
    public override string Range => "400 to 1500 °C. The interval takes the curve's standard error as 17 °C; a glass of another make may differ by far more: ask its maker.";
    public override string Caution => "Anneal by the maker's figures for the glass you melt, not by these.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var glass = GlassField.Of(input);
        var curve = glass.Viscosity;
        if (input[Celsius] - CurveKelvin <= curve.T0Celsius) return SumAnswer.Refused(Celsius, $"at this temperature {glass.Name} is rigid: the curve begins above {curve.T0Celsius + CurveKelvin:0} °C");
        var asked = input[Celsius];
        var viscosity = Doubt.Of(v => curve.Log10DecipascalSeconds(v[0]), asked with { HalfWidth = asked.HalfWidth + CurveKelvin, Least = double.NegativeInfinity, Most = double.PositiveInfinity });
        return SumAnswer.Of(
            SumFigure.Of("log10DecipascalSeconds", "log10 of its viscosity in dPa·s", Measure.Count, viscosity, isSigned: true),
            Point("melting", "Melting point (10² dPa·s)", FixedPoints.Melting), Point("working", "Working point (10⁴)", FixedPoints.Working), Point("softening", "Softening point (10^7.6)", FixedPoints.Softening),
            Point("annealing", "Annealing point (10¹³)", FixedPoints.Annealing), Point("strain", "Strain point (10^14.5)", FixedPoints.Strain)) with { Notes = [Words(viscosity.Value)] };

        SumFigure Point(string name, string words, double log) =>
            SumFigure.Of(name, words, Measure.Temperature, Doubt.Of(v => curve.CelsiusAt(log) + v[0], new Doubt("curve", 0, CurveKelvin)), isSigned: true);
    }

    /// <summary>What the shop does with glass that stiff. Common practice.</summary>
    static string Words(double log10) => log10 switch
    {
        < 2.4 => "Thin as at fining: seeds rise, gathers run off.",
        < 3.6 => "Thin enough to gather.",
        < 5 => "Made for blowing and shaping.",
        < 7.6 => "Stiff: it bends slowly, and heat brings it back.",
        < 12 => "It slumps under its own weight over minutes to hours.",
        < 14.5 => "In the annealing range: stress leaves in minutes to hours.",
        _ => "Below the strain point: stress stays, cooling faster adds only what passes.",
    };
}
