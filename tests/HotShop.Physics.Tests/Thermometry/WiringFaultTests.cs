using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class WiringFaultTests
{
    static readonly Thermocouple K = Thermocouple.OfType(ThermocoupleType.K);

    [Fact]
    public void A_short_reads_the_place_where_the_legs_touch() => Assert.Equal(180, WiringFault.Shorted(K, 180, 25)!.Value, 1e-6);

    [Fact]
    public void A_reversed_couple_of_a_hot_furnace_is_below_any_range() => Assert.Null(WiringFault.PolarityReversed(K, 1150, 25));

    [Fact]
    public void Where_head_and_instrument_are_as_warm_as_each_other_the_lead_does_not_matter()
    {
        Assert.Equal(1150, WiringFault.CopperLead(K, 1150, 25, 25)!.Value, 1e-6);
        Assert.Equal(1150, WiringFault.ExtensionReversed(K, 1150, 25, 25)!.Value, 1e-6);
    }

    [Fact]
    public void Beyond_the_functions_there_is_no_signature()
    {
        Assert.Null(WiringFault.WrongType(K, Thermocouple.OfType(ThermocoupleType.B), 1400, 25));
        Assert.Null(WiringFault.Shorted(K, 1400, 25));
    }
}
