using HotShop.Physics.FurnaceHeat;

namespace HotShop.Monitor.Sums.Each;

sealed class OpeningSum : Sum
{
    const string Shape = "shape", Round = "round", Rectangular = "rectangular", Width = "width", Height = "height", Wall = "wall", Inside = "inside", Emissivity = "emissivity", Open = "open", Available = "available";

    const double RoomCelsius = 20;

    public override string Id => "door";
    public override string Title => "Heat out of an open door or port";
    public override string Group => SumGroups.Heat;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new ChoiceField(Shape, "Opening", [new(Round, "round"), new(Rectangular, "rectangular")]),
        new NumberField(Width, "Diameter or width", Measure.Length, 1, 200, 30),
        new NumberField(Height, "Height", Measure.Length, 1, 200, 30) { When = new(Shape, Rectangular) },
        new NumberField(Wall, "Wall around it", Measure.Length, 0, 100, 15) { Hint = "The thicker it is against the hole, the less gets out." },
        new NumberField(Inside, "Inside", Measure.Temperature, 200, 1500, 1150),
        new NumberField(Open, "Open, share of the time", Measure.Percent, 0, 100, 100),
        new NumberField(Emissivity, "Emissivity", Measure.Count, 0.1, 1, 0.9) { Hint = "Near 1 for a chamber seen through a hole." },
        new NumberField(Available, "Heat left by the flue", Measure.Percent, 5, 95, 35) { Hint = "Available heat: what of the gas stays in the chamber." },
    ];

    public override string Method => "Emissivity × share that the hole's sides let out × area × σ (T⁴ − T room⁴) × share of the time; gas: that over the available heat.";
    public override string Source => "Stefan-Boltzmann law; share let out by the polynomials of Oak Ridge National Laboratory for openings of process heating.";
    public override string Range => "Radiation alone, to a room of 20 °C; hot gas that escapes and cold air drawn in come on top. The share let out is good to 0.04.";
    public override string Caution => "Radiant heat burns at a distance: keep clear of the door plane, eyes protected against infrared. Change doors or burners only as the maker, your local code and licensed people allow.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var isRound = input.Choice(Shape) == Round;
        FurnaceOpening Opening(double width, double height, double wall) =>
            isRound ? FurnaceOpening.Round(width / 100, wall / 100) : FurnaceOpening.Rectangular(width / 100, height / 100, wall / 100);
        double Kilowatts(IReadOnlyList<double> v)
        {
            var sides = Opening(v[0], v[1], v[2]);
            return new FurnaceOpening(sides.AreaSquareMetres, Math.Clamp(sides.Factor + v[6], 0, 1)).RadiatedKilowatts(v[3], v[5], RoomCelsius, v[4] / 100);
        }

        Doubt height = isRound ? new("height", 1, 0) : input[Height];
        Doubt[] numbers = [input[Width], height, input[Wall], input[Inside], input[Open], input[Emissivity], new("share the sides let out", 0, OpeningFactor.LikelyError)];
        var radiated = Doubt.Of(Kilowatts, numbers);
        var gas = Doubt.Of(v => HoldingHeat.FuelKilowatts(Kilowatts(v), v[^1] / 100), [.. numbers, input[Available]]);
        return SumAnswer.Of(
            SumFigure.Of("radiated", "Radiated", Measure.Power, radiated),
            SumFigure.Of("gas", "Gas to make up for it", Measure.Power, gas),
            SumFigure.Beside("sides", "Share that the sides let out", Measure.Percent, 100 * Opening(input[Width], height, input[Wall]).Factor));
    }
}
