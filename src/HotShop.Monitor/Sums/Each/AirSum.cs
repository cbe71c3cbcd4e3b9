using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;

namespace HotShop.Monitor.Sums.Each;

sealed class AirSum : Sum
{
    const string Gas = "gas", Oxygen = "oxygen", Flue = "flue", Air = "air";

    /// <summary>A portable analyser within its service interval, points of oxygen either way. Common practice.</summary>
    const double AnalyserPercent = 0.2;

    /// <summary>A couple in a flue reads low by radiation and leakage, so much either way. Common practice.</summary>
    const double FlueKelvin = 15;

    public override string Id => "air";
    public override string Title => "Excess air and available heat from the flue";
    public override string Group => SumGroups.Heat;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        new ChoiceField(Gas, "Gas", [.. GasProfile.All.Select(g => new SumChoice(g.Id, g.Name))]),
        new NumberField(Oxygen, "Oxygen in the dry flue gas", Measure.Percent, 0, 18, 3) { Hint = "As a portable analyser shows it." },
        new NumberField(Flue, "Flue gas where it leaves the chamber", Measure.Temperature, 100, 1600, 1150),
        new NumberField(Air, "Air for burning", Measure.Temperature, -40, 1200, 25) { Hint = "Warm where a recuperator heats it." },
    ];

    public override string Method => "Balance of the atoms of the gas and of the heat its flue gas carries off: what stays in the chamber is available.";
    public override string Source => "ISO 6976:2016 for heating values, NASA/TP-2002-211556 for the heat of the gases.";
    public override string Range => "Complete burning, dry air, flue gas of 100 to 1600 °C. The interval holds 0.2 points of oxygen and 15 °C of the flue (common practice); air that leaks in before the analyser is not known.";
    public override string Caution => "No reading is leave to turn a burner: air and gas are set by those licensed for it, with a calibrated analyser. Short of air a fire makes carbon monoxide: keep certified CO alarms working.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var fuel = GasProfile.Find(input.Choice(Gas))!.Mixture;
        var oxygen = input[Oxygen] with { HalfWidth = Math.Max(AnalyserPercent, input[Oxygen].HalfWidth) };
        var flue = input[Flue] with { HalfWidth = Math.Max(FlueKelvin, input[Flue].HalfWidth) };
        double Excess(double percent) => ExcessAir.FromDryOxygen(fuel, percent / 100);
        HeatBalance Balance(IReadOnlyList<double> v) => HeatBalance.Of(fuel, Excess(v[0]), v[1], v[2]);
        var exact = Balance([oxygen, flue, input[Air]]);
        return SumAnswer.Of(
            SumFigure.Of("excessAir", "Excess air", Measure.Percent, Doubt.Of(v => 100 * Excess(v[0]), oxygen)),
            SumFigure.Of("available", "Heat that stays, of the gross", Measure.Percent, Doubt.Of(v => 100 * Balance(v).AvailableOfGross, oxygen, flue, input[Air]), isSigned: true),
            SumFigure.Of("flueLoss", "Heat up the flue, of the gross", Measure.Percent, Doubt.Of(v => 100 * Balance(v).FlueLossOfGross, oxygen, flue, input[Air])),
            SumFigure.Beside("availableOfNet", "Heat that stays, of the net", Measure.Percent, 100 * exact.AvailableOfNet),
            SumFigure.Beside("carbonDioxide", "Carbon dioxide in the dry flue gas", Measure.Percent, 100 * exact.Flue.DryCarbonDioxideFraction),
            SumFigure.Beside("quickRule", "Excess air by the rule of thumb, too high", Measure.Percent, 100 * ExcessAir.QuickRule(oxygen / 100))) with { Notes = Notes(oxygen, exact) };
    }

    static IReadOnlyList<string> Notes(double oxygenPercent, HeatBalance exact) =>
        exact.AvailableOfGross <= 0 ? ["Nothing stays: with so much air this fire cannot hold such a temperature."]
        : oxygenPercent < 1 ? ["With so little oxygen some of the gas may leave unburnt: only carbon monoxide tells."] : [];
}
