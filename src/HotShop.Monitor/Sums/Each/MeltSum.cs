using HotShop.Physics.FurnaceHeat;
using HotShop.Physics.Glass;
using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Sums.Each;

sealed class MeltSum : Sum
{
    const string Glass = "glass", From = "from", To = "to", Charged = "charged", Power = "power", Available = "available";

    const double KilojoulesPerKilowattHour = 3600;

    /// <summary>Reactions and gases of batch are known to so much of them. Common practice.</summary>
    const double Reaction = 0.25;

    public override string Id => "melt";
    public override string Title => "Heat and time to melt a charge";
    public override string Group => SumGroups.Glass;

    public override IReadOnlyList<SumField> Fields { get; } =
    [
        GlassField.WithHeat,
        new ChoiceField(Charged, "Charged as", [new(ChargeMaterial.Cullet.Name, ChargeMaterial.Cullet.Name), new(ChargeMaterial.Batch.Name, ChargeMaterial.Batch.Name)]),
        new NumberField(Glass, "Glass it leaves", Measure.Mass, 0.1, 2000, 20),
        new NumberField(From, "Charged at", Measure.Temperature, 0, 600, 20),
        new NumberField(To, "Molten at", Measure.Temperature, 700, 1500, 1230),
        new NumberField(Power, "Heat that gets into the glass", Measure.Power, 0.1, 500, 5) { Usual = ("kW", "kW"), Hint = "What the burner gives beyond holding, less what the flue takes." },
        new NumberField(Available, "Heat left by the flue", Measure.Percent, 5, 95, 35) { Hint = "Available heat: what of the gas stays in the chamber." },
    ];

    public override string Method => "Heat content of the glass between the two temperatures, for batch with the heat of its reactions and gases; time: that over the power into the glass.";
    public override string Source => "Sharp and Ginther 1951 (coefficients from memory); reactions and gases: EU reference document on glass manufacture, from memory.";
    public override string Range => "Heat content ± 3 %, reactions and gases ± 25 % (common practice). Melt-out alone: fining takes its own hours.";
    public override string Caution => "No furnace is charged by a sum: charge as your shop is trained to, and leave burner settings to those licensed for them.";

    public override SumAnswer Work(SumInput input, SumAsker asker)
    {
        var glass = GlassField.Of(input);
        var batch = input.Choice(Charged) == ChargeMaterial.Batch.Name ? 1.0 : 0;
        double PerKilogram(IReadOnlyList<double> v)
        {
            var cullet = glass.MeltingKilojoulesPerKilogram(v[1], v[2], batchShare: 0);
            return (cullet * v[3] + (glass.MeltingKilojoulesPerKilogram(v[1], v[2], batch) - cullet) * v[4]) / KilojoulesPerKilowattHour;
        }

        double KilowattHours(IReadOnlyList<double> v) => v[0] * PerKilogram(v);
        Doubt[] numbers = [input[Glass], input[From], input[To], Doubt.Factor("heat content", GlassBudgets.HeatContentPercent / 100), Doubt.Factor("reactions and gases", Reaction)];
        var heat = Doubt.Of(KilowattHours, numbers);
        return SumAnswer.Of(
            SumFigure.Of("heat", "Heat into the glass", Measure.Energy, heat),
            SumFigure.Of("time", "Time to melt out", Measure.Hours, Doubt.Of(v => MeltOut.Time(v[0], PerKilogram(v) * KilojoulesPerKilowattHour, v[^1]).TotalHours, [.. numbers, input[Power]])),
            SumFigure.Of("gas", "Gas for it, beyond holding", Measure.Energy, Doubt.Of(v => HoldingHeat.FuelKilowatts(KilowattHours(v), v[^1] / 100), [.. numbers, input[Available]])),
            SumFigure.Of("perKilogram", "Of each kilogram of glass", Measure.EnergyPerMass, Doubt.Of(PerKilogram, numbers)));
    }
}
