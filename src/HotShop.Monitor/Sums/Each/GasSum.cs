using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using NodaTime;

namespace HotShop.Monitor.Sums.Each;

sealed class GasSum(StudioPlan plan, FuelBook fuel) : Sum
{
    const string Volume = "volume", Counted = "counted", Meter = "meter";

    public override string Id => "gas";
    public override string Title => "Gas to kilowatt-hours and money";
    public override string Group => SumGroups.Fuel;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new NumberField(Volume, "Gas", Measure.GasVolume, 0, 1e6, 10),
        new ChoiceField(Counted, "Counted", [new(Meter, "as the meter shows it"), new("base", "at base conditions, as many bills have it")]),
    ];

    public override string Method => $"Volume, brought to {fuel.Gas.Base.Name} where the meter counted it, times the gross heating value of the studio's gas; money by the price list in force.";
    public override string Source => "Heating value, pressure and altitude from the configuration; gas laws as in docs/money.md.";
    public override string Range => "Gross heat, as bills count it. The interval holds what the configuration says of the heating value's doubt and, where the meter counted, of the line's; the meter's own class comes on top. The price is that of the next unit, taxes included, without standing charges.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var isLine = input.Choice(Counted) == Meter;
        double Base(double volume) => isLine ? fuel.Gas.ToBase(volume) : volume;
        var typed = Doubt.Of(v => fuel.Gas.Fuel.GrossKilowattHours(Base(v[0])), input[Volume]);
        var energy = typed.With(fuel.Gas.BudgetOf(typed.Value).Contributions.Where(c => isLine || c.Name == "heating value"));
        var figures = new List<SumFigure> { SumFigure.Of("energy", "Gross heat", Measure.Energy, energy) };
        if (asker.IsOwner && fuel.Prices.On(EnergyKind.Gas, asker.At.InZone(plan.Zone).Date) is { } price)
            figures.Add(SumFigure.Of("cost", $"Cost in {plan.Configuration.Currency}", Measure.Count, energy.Times((double)price)) with { IsMoney = true });
        figures.Add(SumFigure.Beside("base", $"Volume at {fuel.Gas.Base.Name}", Measure.GasVolume, Base(input[Volume])));
        figures.Add(SumFigure.Of("carbonDioxide", "Carbon dioxide", Measure.Mass, energy.Times(fuel.Gas.Fuel.CarbonDioxideKilogramsPerKilowattHour)));
        return SumAnswer.Of([.. figures]) with { Notes = Notes(asker, figures) };
    }

    static IReadOnlyList<string> Notes(SumAsker asker, List<SumFigure> figures) =>
        !asker.IsOwner ? ["What it costs is shown to the owner, after signing in."] : figures.Exists(f => f.IsMoney) ? [] : ["No price list for gas is in force: write one under \"prices\" in hotshop.json."];
}
