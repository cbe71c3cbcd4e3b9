using HotShop.Monitor.Fuel;
using HotShop.Physics.FuelGases;

namespace HotShop.Monitor.Sums.Each;

sealed class PropaneSum : Sum
{
    const string Amount = "amount", Unit = "unit";

    /// <summary>Commercial propane differs from pure by so much in heat per litre or kilogram. Common practice.</summary>
    const double Blend = 0.03;

    static readonly (string Code, string Words, BilledUnit Unit)[] Units =
        [("litre", "litres", BilledUnit.PropaneLitre), ("gallon", "US gallons", BilledUnit.PropaneGallon), ("kilogram", "kilograms", BilledUnit.PropaneKilogram)];

    public override string Id => "propane";
    public override string Title => "Propane by the litre, gallon or kilogram";
    public override string Group => SumGroups.Fuel;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new NumberField(Amount, "Propane", Measure.Count, 0, 1e6, 100),
        new ChoiceField(Unit, "in", [.. Units.Select(u => new SumChoice(u.Code, u.Words))]),
    ];

    public override string Method => "Times the gross heat of a litre, gallon or kilogram of propane.";
    public override string Source => "40 CFR 98 table NN-1 (3.84 million Btu a barrel) for litres and gallons at 15.6 °C (60 °F); ISO 6976:2016 for kilograms.";
    public override string Range => "Liquid at 15.6 °C (60 °F): a cold tank's litre holds more. The interval lets a commercial blend differ by 3 % (common practice).";
    public override string Caution => "Propane is heavier than air and gathers in low places. Tanks, lines and regulators are for licensed people and the local code alone.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var asked = Units.Single(u => u.Code == input.Choice(Unit)).Unit;
        var energy = Doubt.Of(v => v[0] * asked.KilowattHours()!.Value * v[1], input[Amount], Doubt.Factor("blend", Blend));
        return SumAnswer.Of(
            SumFigure.Of("energy", "Gross heat", Measure.Energy, energy),
            SumFigure.Of("carbonDioxide", "Carbon dioxide", Measure.Mass, energy.Times(GasProfile.Propane.CarbonDioxideKilogramsPerKilowattHour)));
    }
}
