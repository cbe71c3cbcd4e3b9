using HotShop.Simulator.Plant;

namespace HotShop.Simulator.Tests.Plant;

public class AvailableHeatTests
{
    // Enthalpies of NASA/TP-2002-211556, methane, air at 25 °C, no dissociation: percent of gross that stays in the chamber, to 0.1.
    [Theory]
    [InlineData(538, 0.0, 70.3), InlineData(871, 0.1, 53.2), InlineData(1093, 0.1, 42.3), InlineData(1149, 0.1, 39.6)]
    [InlineData(1204, 0.0, 40.9), InlineData(1204, 0.1, 36.8), InlineData(1204, 0.2, 32.7), InlineData(1204, 0.5, 20.4), InlineData(1316, 0.2, 26.6)]
    public void The_flue_takes_what_its_enthalpy_says(double flueCelsius, double excessAir, double percent) =>
        Assert.Equal(percent, new AvailableHeat(excessAir).FractionOfGross(flueCelsius) * 100, 0.4);
}
