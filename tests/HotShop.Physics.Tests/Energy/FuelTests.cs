using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Energy;

public class FuelTests
{
    // 2.000 m³/h for 2 h, both ends sampled, irregular spacing, with a step up to 3 m³/h from 40 to 70 min: by hand
    // 2 · 2 + 1 · 0.5 = 4.5 m³ of line gas; at 21 mbar, 101.325 kPa and 20 °C the base volume is 4.5 · 1.003316 m³.
    [Fact]
    public void Two_hours_of_flow_with_a_step_agree_with_the_hand_calculation()
    {
        var flow = Samples((0, 2), (0.5, 2), (3, 2), (3.2, 2), (7, 2), (11.7, 2), (16, 2), (20, 2), (24.9, 2), (29, 2), (33, 2), (37, 2), (39.999, 2),
            (40.001, 3), (44, 3), (48.5, 3), (52, 3), (56, 3), (60, 3), (63, 3), (67, 3), (69.999, 3),
            (70.001, 2), (74, 2), (78, 2), (82, 2), (86, 2), (90, 2), (94, 2), (98, 2), (102, 2), (106, 2), (110, 2), (114, 2), (118, 2), (120, 2));
        var total = HourIntegral.Of(At(0), At(120), flow, Course.Linear, Duration.FromMinutes(5));
        Assert.Equal(7200, total.CoveredSeconds);
        Assert.Equal(4.5, total.IntegralHours, 4.5 * 0.0001);
        var gas = FuelGas.NaturalGas.WithGrossMegajoulesPerCubicMetre(39.5, BaseConditions.Iso13443);
        var byHand = 4.5 * 1.003316 * 39.5 / 3.6;
        Assert.Equal(byHand, gas.GrossKilowattHours(total.IntegralHours, 2100, 101325, 20), byHand * 0.001);
    }

    [Fact]
    public void An_atmosphere_of_no_pressure_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GasVolume.ToBase(1, 0, 0, 15, BaseConditions.Iso13443));
}
