using Xunit;
using HotShop.Monitor.Wire;
using static HotShop.Monitor.Tests.Wire.SomeChannels;

namespace HotShop.Monitor.Tests.Wire;

public class UcumTests
{
    // NIST SP 811 (2008), appendix B: cubic foot 2.831 685 E-02 m3, Btu(IT) 1.055 056 E+03 J, psi 6.894 757 E+03 Pa, inch of water (conventional) 2.490 889 E+02 Pa,
    // pound 4.535 924 E-01 kg; °C = (°F − 32)/1.8 and K − 273.15 exact. Tolerance: the printed digits.
    [Theory]
    [InlineData("furnace-1/crown", "[degF]", 2100, 1148.8889, 5e-5)]
    [InlineData("furnace-1/crown", "K", 273.15, 0, 1e-9)]
    [InlineData("furnace-1/gas", "[cft_i]/h", 1, 0.02831685, 5e-9)]
    [InlineData("furnace-1/gas", "cfh", 1000, 28.31685, 5e-6)]
    [InlineData("furnace-1/gas", "L/min", 1000, 60, 1e-9)]
    [InlineData("furnace-1/gas", "m³/h", 2.5, 2.5, 0)]
    [InlineData("shop/meter", "[cft_i]", 100, 2.831685, 5e-7)]
    [InlineData("shop/meter", "ccf", 1, 2.831685, 5e-7)]
    [InlineData("shop/pulses", "{pulse}", 12345, 123.45, 1e-9)]
    [InlineData("shop/supply", "mbar", 21, 2100, 1e-9)]
    [InlineData("shop/supply", "[psi]", 1, 6894.757, 5e-4)]
    [InlineData("shop/supply", "inH2O", 1, 249.0889, 5e-4)]
    [InlineData("shop/carbon-monoxide", "[ppm]", 35, 35, 0)]
    [InlineData("shop/gas-in-air", "%", 10, 10, 0)]
    [InlineData("shop/gas-in-air", "%LEL", 10, 10, 0)]
    [InlineData("furnace-1/oxygen", "%", 3.2, 3.2, 0)]
    [InlineData("furnace-1/heat", "W", 60500, 60.5, 1e-9)]
    [InlineData("furnace-1/heat", "Btu/h", 1000, 0.2930711, 5e-7)]
    [InlineData("furnace-1/work", "kWh", 7, 7, 0)]
    [InlineData("furnace-1/work", "MJ", 3.6, 1, 1e-12)]
    [InlineData("shop/scale", "lb", 100, 45.35924, 5e-6)]
    public void Units_come_out_as_the_published_tables_say(string channel, string unit, double sent, double stored, double tolerance) =>
        Assert.Equal(stored, Value(channel, FormattableString.Invariant($"{{\"value\":{sent},\"unit\":\"{unit}\"}}")), tolerance);

    [Theory, InlineData("11.951", 11.951), InlineData("{\"value\":11951,\"unit\":\"uV\"}", 11.951)]
    public void A_couples_voltage_stays_a_voltage(string payload, double millivolts)
    {
        var reading = Assert.Single(Send("furnace-1/couple", payload).Readings);
        Assert.Equal("mV", reading.Unit);
        Assert.Equal(millivolts, reading.Value, 12);
    }

    [Fact]
    public void A_couple_may_send_degrees_when_it_says_so() => Assert.Equal(1148, Value("furnace-1/couple", """{"value":1148,"unit":"Cel"}"""));

    [Fact]
    public void A_bare_number_from_a_couple_without_a_configured_unit_is_not_guessed() =>
        Assert.Contains("may be mV or °C", Reason(Send("furnace-1/bare-couple", "11.951")), StringComparison.Ordinal);

    [Fact]
    public void Pulses_without_a_volume_are_no_gas() =>
        Assert.Contains("cubicMetresPerPulse", Reason(Send("shop/meter", """{"value":7,"unit":"{pulse}"}""")), StringComparison.Ordinal);

    [Theory]
    [InlineData("furnace-1/gas", "m3", "a unit of a gas volume")]
    [InlineData("furnace-1/heat", "kWh", "a unit of an energy")]
    [InlineData("furnace-1/heat", "kw", "unknown")]
    [InlineData("furnace-1/gas", "scfh", "unknown")]
    [InlineData("shop/gas-in-air", "[ppm]", "fraction of the volume")]
    [InlineData("shop/gas-in-air", "vol%", "fraction of the volume")]
    [InlineData("shop/carbon-monoxide", "%LEL", "lower explosive limit")]
    public void A_unit_of_something_else_is_refused(string channel, string unit, string reason) =>
        Assert.Contains(reason, Reason(Send(channel, $$"""{"value":1,"unit":"{{unit}}"}""")), StringComparison.Ordinal);

    [Fact]
    public void A_value_that_overflows_in_conversion_is_refused() =>
        Assert.Contains("too large once converted", Reason(Send("furnace-1/work", """{"value":1e308,"unit":"MW.h"}""")), StringComparison.Ordinal);

    [Fact]
    public void Every_quantity_accepts_its_own_stored_unit()
    {
        foreach (var quantity in Enum.GetValues<Quantity>())
        {
            Assert.Null(Ucum.ProblemWith(quantity.CanonicalUnit(), quantity));
            var stored = Ucum.ToStored(1, quantity.CanonicalUnit(), Plan("any", quantity));
            Assert.Equal((1.0, quantity.CanonicalUnit(), null), (stored.Value, stored.Unit, stored.Problem));
        }
    }
}
