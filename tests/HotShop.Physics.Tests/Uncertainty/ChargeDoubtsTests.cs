using HotShop.Physics.Pot;
using HotShop.Physics.Uncertainty;
using Xunit;

namespace HotShop.Physics.Tests.Uncertainty;

public class ChargeDoubtsTests
{
    static readonly ChargeDoubts usual = new();

    static double PercentOf(Budget budget) => budget.StandardUncertainty / budget.Value * 100;

    // Rectangular limits in quadrature (GUM, JCGM 100:2008, 4.3.7, 5.1.6): scale 1 % with yield 1 % or 3 %, common practice.
    [Fact]
    public void A_charge_is_as_well_known_as_scale_and_yield()
    {
        var cullet = usual.Glass(40, ChargeMaterial.Cullet, isYieldStated: false);
        Assert.Equal(40, cullet.Value, 1e-9);
        Assert.Equal(Math.Sqrt((1 + 1) / 3.0), PercentOf(cullet), 1e-9);
        var batch = usual.Glass(40, ChargeMaterial.Batch, isYieldStated: false);
        Assert.Equal(40 * ChargeMaterial.Batch.GlassYield, batch.Value, 1e-9);
        Assert.Equal(Math.Sqrt((1 + 9) / 3.0), PercentOf(batch), 1e-9);
        Assert.Equal(Math.Sqrt((1 + 1) / 3.0), PercentOf(usual.Glass(40, ChargeMaterial.Batch, isYieldStated: true)), 1e-9);
        Assert.Equal(Math.Sqrt((4 + 1) / 3.0), PercentOf(new ChargeDoubts(ScalePercent: 2).Glass(40, ChargeMaterial.Frit, isYieldStated: false)), 1e-9);
    }

    [Fact]
    public void A_month_of_charges_on_one_scale_is_no_better_known_than_one_of_them()
    {
        var month = Budget.Sum([.. Enumerable.Repeat(usual.Glass(20, ChargeMaterial.Cullet, isYieldStated: false), 25)]);
        Assert.Equal(500, month.Value, 1e-9);
        Assert.Equal(Math.Sqrt(2 / 3.0), PercentOf(month), 1e-9);
        // Two materials have one scale and two yields.
        var mixed = Budget.Sum(usual.Glass(50, ChargeMaterial.Cullet, isYieldStated: false), usual.Glass(50, ChargeMaterial.Frit, isYieldStated: false));
        Assert.Equal(Math.Sqrt((1 + 0.5) / 3), PercentOf(mixed), 1e-9);
    }
}
