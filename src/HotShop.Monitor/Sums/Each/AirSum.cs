using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums.Each;

sealed class AirSum : Sum
{
    const string Gas = "gas", Oxygen = "oxygen", Flue = "flue", Air = "air";

    /// <summary>Below it gas leaves a real burner unburnt here and there, whatever the mean says. Common practice.</summary>
    const double LittleOxygenPercent = 1;

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
    public override string Range => "Complete burning, dry air, flue gas of 100 to 1600 °C. The interval holds what docs/combustion.md says of an analyser, a flue and what the balance leaves out; air that leaks in before the analyser is not known.";
    public override string Caution => "No reading is permission to adjust a burner: air and gas are set by people licensed for it, by the local code, with a calibrated analyser. Short of air a fire makes carbon monoxide: keep certified CO alarms working, and if one sounds or somebody feels unwell, everybody goes outside and help is called from there.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var fuel = GasProfile.Find(input.Choice(Gas))!.Mixture;
        if (input[Air].Value >= input[Flue].Value) return SumAnswer.Refused(Air, "air is warmed by the flue gas and cannot be hotter than it");
        var (oxygen, flue, air, usual) = (input[Oxygen], input[Flue], input[Air], new FlueDoubts());
        var reading = new FlueReading(fuel, oxygen / 100, wet: false, usual with
        {
            OxygenPercent = Math.Max(usual.OxygenPercent, oxygen.HalfWidth), FlueKelvin = Math.Max(usual.FlueKelvin, flue.HalfWidth), AirKelvin = Math.Max(usual.AirKelvin, air.HalfWidth),
        });
        var available = reading.AvailableOfGross(flue, air).Times(100);
        var exact = HeatBalance.Of(fuel, reading.ExcessAir.Value, flue, air);
        return SumAnswer.Of(
            SumFigure.Of("excessAir", "Excess air", Measure.Percent, reading.ExcessAir.Times(100)),
            SumFigure.Of("available", "Heat that stays, of the gross", Measure.Percent, available, isSigned: true),
            SumFigure.Of("flueLoss", "Heat up the flue, of the gross", Measure.Percent, new Budget(100).Less(available)),
            SumFigure.Beside("availableOfNet", "Heat that stays, of the net", Measure.Percent, 100 * exact.AvailableOfNet),
            SumFigure.Beside("carbonDioxide", "Carbon dioxide in the dry flue gas", Measure.Percent, 100 * exact.Flue.DryCarbonDioxideFraction),
            SumFigure.Beside("quickRule", "Excess air by the rule of thumb, too high", Measure.Percent, 100 * ExcessAir.QuickRule(oxygen / 100))) with { Notes = [.. Notes(reading, exact, oxygen)] };
    }

    static IEnumerable<string> Notes(FlueReading reading, HeatBalance exact, double oxygenPercent)
    {
        if (exact.AvailableOfGross <= 0) yield return "Nothing stays: with so much air this fire cannot hold such a temperature.";
        if (oxygenPercent < LittleOxygenPercent || reading.ExcessAir.Low95 <= 0) yield return "The fire may be short of air and make carbon monoxide: oxygen alone cannot tell, only a measurement of carbon monoxide can.";
    }
}
