using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;

namespace HotShop.Evaluation.Numbers;

/// <summary>What hydrogen does to a gas, and what a hot flue leaves of its heat.</summary>
static class GasPictures
{
    public static Drawing Hydrogen()
    {
        var chart = new Chart("Hydrogen in natural gas: what a cubic metre and what a burner loses", new("% hydrogen by volume", 0, 100, 10), new("% of the gas without hydrogen", 0, 100, 10));
        var plain = At(0);
        chart.Curve(Curve.Of(0, 100, 1, h => 100 * At(h).GrossMegajoulesPerCubicMetre / plain.GrossMegajoulesPerCubicMetre))
            .Curve(Curve.Of(0, 100, 1, h => 100 * At(h).GrossWobbeMegajoulesPerCubicMetre / plain.GrossWobbeMegajoulesPerCubicMetre), dashed: true)
            .Words(52, 100 * At(52).GrossMegajoulesPerCubicMetre / plain.GrossMegajoulesPerCubicMetre, "heating value of a m³", Anchor.End, right: -0.3, up: -1.4, bold: true)
            .Words(58, 100 * At(58).GrossWobbeMegajoulesPerCubicMetre / plain.GrossWobbeMegajoulesPerCubicMetre, "Wobbe index: what a burner gets", Anchor.Start, right: -1, up: 0.8, bold: true);
        return chart.Drawing;

        static GasProperties At(double percent) =>
            GasProfile.NaturalGas.Mixture.With(GasMixture.Pure(GasComponent.Hydrogen), percent / 100).At(GasReference.Iso13443);
    }

    public static Drawing AvailableHeat()
    {
        var chart = new Chart("Heat that stays in the furnace, methane with 10 % excess air", new("flue °C", 0, 1400, 100), new("% of the net heat", 0, 100, 10));
        var fuel = GasMixture.Pure(GasComponent.Methane);
        var oxygen = FlueGas.Of(fuel, 0.1).DryOxygenFraction;
        chart.Curve(Curve.Of(100, 1400, 10, t => 100 * HeatBalance.Of(fuel, 0.1, t).AvailableOfNet))
            .Curve(Curve.Of(100, 1400, 10, t => 100 * (1 - Siegert.NaturalGas.FlueLossOfNet(t, HeatBalance.StandardCelsius, oxygen))), Tone.Dim, dashed: true)
            .Curve(Curve.Of(100, 1400, 10, t => 100 * HeatBalance.Of(fuel, 0.1, t, 400).AvailableOfNet), width: 2)
            .Words(1100, 100 * HeatBalance.Of(fuel, 0.1, 1100).AvailableOfNet, "from enthalpies", Anchor.End, right: -0.4, up: -1.5, bold: true)
            .Words(40, 22, "dashed: Siegert's boiler formula, too kind at a furnace's flue", right: 0, tone: Tone.Dim)
            .Words(800, 100 * HeatBalance.Of(fuel, 0.1, 800, 400).AvailableOfNet, "air preheated to 400 °C", right: 0.3, up: 0.7, bold: true);
        return chart.Drawing;
    }
}
