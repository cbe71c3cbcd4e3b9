using HotShop.Monitor.Pot;
using HotShop.Monitor.Tests.Support;
using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Pot;

public class MeltedHeatTests
{
    static PotPlan Pot(string profile, double celsius = 1150) => PotPlan.Of(HotShop.Monitor.Configuration.PlanBuilder.Build(
        SomeStudio.With("furnace-1", a => a with { Pot = a.Pot! with { Glass = new() { Profile = profile, DippedCelsius = celsius } } }), Path.GetTempPath()).Appliance("furnace-1")!)!;

    static LoggedCharge Charge(double kilograms, bool isBatch) => new(OpenStudio.Start, kilograms, isBatch, new Budget(kilograms));

    // Window glass from 20 to 1150 °C: 0.379 kWh/kg (Sharp and Ginther 1951); batch takes 490 + 200 kJ/kg more (EU reference document, from memory, and an order of magnitude).
    [Theory, InlineData(20, 0, 0.379), InlineData(0, 20, 0.570), InlineData(15, 5, 0.427)]
    public void Heat_into_the_glass_goes_by_cullet_and_batch(double cullet, double batch, double kilowattHoursPerKilogram)
    {
        var heat = MeltedHeat.Of(Pot("window-soda-lime"), [Charge(cullet, false), Charge(batch, true)])!;
        Assert.Equal(kilowattHoursPerKilogram, heat.KilowattHoursPerKilogram.Value, 0.001);
        Assert.Equal(1150, heat.Celsius);
    }

    // 60 kg a day in 612 kWh: 3.7 %; 3 % of the heat content as limits, 1 and 2 % as standard uncertainties: 2.8 % together.
    [Fact]
    public void Of_a_days_gas_a_twentieth_ends_in_the_glass()
    {
        var share = MeltedHeat.Of(Pot("window-soda-lime"), [Charge(60, false)])!.ShareOf(Estimate.Relative(60, 0.01), Estimate.Relative(612, 0.02));
        Assert.Equal(60 * 0.379 / 612, share.Value, 0.0001);
        Assert.Equal(0.0283 * share.Value, share.StandardUncertainty, 0.0002 * share.Value * 10);
        Assert.True(share.Low95 < share.Value && share.Value < share.High95);
    }

    [Fact]
    public void Hotter_glass_took_up_more() => Assert.True(
        MeltedHeat.Of(Pot("window-soda-lime", 1250), [Charge(1, false)])!.KilowattHoursPerKilogram.Value > MeltedHeat.Of(Pot("window-soda-lime"), [Charge(1, false)])!.KilowattHoursPerKilogram.Value);

    [Fact]
    public void Nothing_charged_took_up_nothing_that_is_known() => Assert.Null(MeltedHeat.Of(Pot("window-soda-lime"), []));

    [Fact]
    public async Task The_interface_tells_the_efficiency_of_what_was_burnt()
    {
        await using var service = await TestService.Start();
        var from = service.Now - Hours(3);
        await service.Log(new { appliance = "furnace-1", entry = "charge", id = "heat-charge", material = "cullet", massKg = 20, time = (from + Hours(1)).ToString() });
        await service.Send("furnace-1/gas-flow", Steady(5, Seconds(10), from, from + Hours(2)));
        await service.Move();
        var answer = await service.Get($"/api/fuel/per-kilogram?appliance=furnace-1&from={from}&to={from + Hours(2)}");
        var told = answer.GetProperty("efficiency");
        var (efficiency, heat) = (told.GetProperty("meltingEfficiency").GetDouble(), told.GetProperty("glassKwhPerKg").GetDouble());
        Assert.Equal(20 * heat / answer.GetProperty("energyKwh").GetDouble(), efficiency, 1e-9);
        Assert.InRange(efficiency, told.GetProperty("meltingEfficiencyLow95").GetDouble(), told.GetProperty("meltingEfficiencyHigh95").GetDouble());
        Assert.InRange(efficiency, 0.05, 0.1);
    }
}
