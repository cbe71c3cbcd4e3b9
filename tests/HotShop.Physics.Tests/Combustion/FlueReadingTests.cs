using HotShop.Physics.Combustion;
using HotShop.Physics.FuelGases;
using HotShop.Physics.Uncertainty;
using Xunit;

namespace HotShop.Physics.Tests.Combustion;

public class FlueReadingTests
{
    static readonly GasMixture gas = GasProfile.NaturalGas.Mixture;
    static readonly FlueDoubts usual = new();

    [Fact]
    public void The_figures_are_those_of_the_balance()
    {
        var reading = new FlueReading(gas, 0.03, wet: false, usual);
        var excess = ExcessAir.FromDryOxygen(gas, 0.03);
        Assert.Equal(excess, reading.ExcessAir.Value);
        Assert.Equal(HeatBalance.Of(gas, excess, 1150, 20).AvailableOfGross, reading.AvailableOfGross(1150, 20).Value);
        Assert.Equal(HeatBalance.Of(gas, excess, 1150).FlueLossOfNet, reading.FlueLossOfNet(1150).Value);
        Assert.Equal(ExcessAir.FromWetOxygen(gas, 0.03), new FlueReading(gas, 0.03, wet: true, usual).ExcessAir.Value);
    }

    [Fact]
    public void The_usual_doubts_are_those_that_are_documented()
    {
        Assert.Equal((0.3, 25, 10, 0.8), (usual.OxygenPercent, usual.FlueKelvin, usual.AirKelvin, usual.BalancePercent));
        var shares = new FlueReading(gas, 0.03, wet: false, usual).AvailableOfGross(1150).Contributions.ToDictionary(c => c.Name, c => c.StandardUncertainty);
        // Limits over the root of three (GUM 4.3.7).
        Assert.Equal(0.003 / Math.Sqrt(3), shares["oxygen reading"], 1e-12);
        Assert.Equal(25 / Math.Sqrt(3), shares["flue temperature"], 1e-9);
        Assert.Equal(10 / Math.Sqrt(3), shares["air temperature"], 1e-9);
        Assert.Equal(0.008 / Math.Sqrt(3), shares["moist air and gas"], 1e-12);
    }

    [Theory, InlineData(0.005, 500), InlineData(0.03, 1150), InlineData(0.08, 1300), InlineData(0.02, 150), InlineData(0.02, 1570)]
    public void Of_a_hundred_fires_ninety_five_lie_in_the_interval(double oxygen, double flue)
    {
        var chance = new Random(21);
        double Off(double limit) => limit * (2 * chance.NextDouble() - 1);
        const int draws = 20_000;
        var (air, available) = (0, 0);
        for (var i = 0; i < draws; i++)
        {
            // The truth is drawn, then what the instruments make of it.
            var (seenOxygen, seenFlue) = (Math.Max(0, oxygen + Off(0.003)), Math.Clamp(flue + Off(25), 100, 1600));
            var reading = new FlueReading(gas, seenOxygen, wet: false, usual);
            var excess = ExcessAir.FromDryOxygen(gas, oxygen);
            var truth = HeatBalance.Of(gas, excess, flue, 25 + Off(10)).AvailableOfGross + Off(0.008);
            if (Inside(reading.ExcessAir, excess)) air++;
            if (Inside(reading.AvailableOfGross(seenFlue), truth)) available++;
        }
        Assert.InRange(air / (double)draws, 0.93, 0.97);
        Assert.InRange(available / (double)draws, 0.93, 0.97);

        static bool Inside(Budget budget, double truth) => truth >= budget.Low95 && truth <= budget.High95;
    }

    [Theory, InlineData(-0.001), InlineData(0.1805), InlineData(double.NaN)]
    public void A_sample_that_is_nearly_air_is_no_fire(double oxygen) => Assert.Throws<ArgumentOutOfRangeException>(() => new FlueReading(gas, oxygen, wet: false, usual));

    [Fact]
    public void The_ends_of_the_range_are_answered()
    {
        Assert.Equal(0, new FlueReading(gas, 0, wet: false, usual).ExcessAir.Value);
        Assert.True(new FlueReading(gas, 0.18, wet: false, new FlueDoubts(2)).ExcessAir.Value > 3);
        Assert.Throws<ArgumentOutOfRangeException>(() => new FlueDoubts(2.005));
        Assert.Throws<ArgumentOutOfRangeException>(() => new FlueDoubts(0.3, -1));
    }
}
