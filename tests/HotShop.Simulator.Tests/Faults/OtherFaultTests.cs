using HotShop.Simulator.Faults;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Simulator.Tests.Faults;

public class OtherFaultTests
{
    // Published signature: an open circuit jumps to the top of the range or beyond. Type S ends at 18.7 mV, R at 1768 °C, K at 1372 °C.
    [Theory, InlineData("furnace-1", "crown", 18.7), InlineData("glory-hole-1", "chamber", 1767), InlineData("annealer-1", "chamber", 1371)]
    public void An_open_couple_jumps_to_the_end_of_its_range_and_the_heat_goes_off(string appliance, string channel, double atLeast)
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.CoupleOpen, appliance, 4, 0.2));
        var seen = new Recording(studio.Advance(Run.At(5)));
        Assert.All(seen.Values($"{appliance}/{channel}", 4.003, 4.2), value => Assert.True(value > atLeast));
        Assert.True(seen.Last($"{appliance}/{channel}", 5) < atLeast);
        if (appliance != "annealer-1") Assert.Equal(0, seen.Last($"{appliance}/flame", 4.19));
    }

    [Fact]
    public void A_drifting_couple_reads_the_setpoint_while_the_furnace_gets_hotter()
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.CoupleDrifting, Quillmere.Furnace, 2, 4));
        studio.Advance(Run.At(5.9));
        Assert.InRange(studio.Plant.Furnace.Crown.IndicatedCelsius, 1140, 1155);
        Assert.InRange(studio.Truth.CrownCelsius, 1170, 1200);
    }

    [Fact]
    public void An_annealer_without_elements_falls_below_its_setpoint_with_the_relay_on()
    {
        var studio = Run.Studio(1, Run.Fault(FaultKind.ElementFailed, Quillmere.FirstAnnealer, 5, 2));
        var seen = new Recording(studio.Advance(Run.At(7)));
        Assert.True(seen.Last("annealer-1/setpoint", 7) - seen.Last("annealer-1/chamber", 7) > 40);
        Assert.True(seen.Values("annealer-1/relay", 6.5, 7).Average() > 0.95);
    }

    [Fact]
    public void A_silent_device_sends_nothing_and_nothing_comes_later()
    {
        var seen = Recording.Of(3, Run.Fault(FaultKind.SilentDevice, Quillmere.Furnace, 1, 0.5));
        Assert.DoesNotContain(seen.Messages, m => m.Device == "dev-furnace-1" && m.At > Run.At(1) && m.At < Run.At(1.5));
        Assert.All(seen.Messages.Where(m => m.Device == "dev-furnace-1"), m => Assert.Equal(m.At, TimeOf(m)));
        Assert.NotEmpty(seen.Values("shop/meter", 1, 1.5));
    }

    [Fact]
    public void A_device_that_was_cut_off_sends_its_backlog_with_the_old_times()
    {
        var seen = Recording.Of(3, Run.Fault(FaultKind.HeldBackDevice, Quillmere.SecondAnnealer, 1, 0.5));
        var backlog = seen.Messages.Where(m => m.Device == "dev-annealer-2" && TimeOf(m) >= Run.At(1) && TimeOf(m) < Run.At(1.5)).ToArray();
        Assert.Equal(180, backlog.Count(m => m.Topic.EndsWith("/power", StringComparison.Ordinal)));
        Assert.All(backlog, m => Assert.Equal(Run.At(1.5), m.At));
    }

    [Theory]
    [InlineData("flame-out-with-gas@glory-hole-1+05:00/00:20", FaultKind.FlameOutWithGas, "glory-hole-1", 300, 20)]
    [InlineData("power-cut@shop+30:05/01:00", FaultKind.PowerCut, "shop", 1805, 60)]
    public void A_fault_is_ordered_in_one_word(string text, FaultKind kind, string appliance, int afterMinutes, int forMinutes) =>
        Assert.Equal((new FaultOrder(kind, appliance, Duration.FromMinutes(afterMinutes), Duration.FromMinutes(forMinutes)), null), FaultOrder.Parse(text));

    [Theory]
    [InlineData("flame-out-with-gas", "write KIND@APPLIANCE+HH:MM/HH:MM")]
    [InlineData("gas-out@furnace-1+01:00/00:10", "is no kind of fault")]
    [InlineData("power-cut@furnace-1+01:00/00:10", "name one of shop")]
    [InlineData("element-failed@annealer-1+01:00/00:00", "length must be above zero")]
    public void A_fault_that_cannot_be_is_refused_with_what_to_write(string text, string says)
    {
        var (order, problem) = FaultOrder.Parse(text);
        Assert.Null(order);
        Assert.Contains(says, problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_studio_refuses_an_order_it_cannot_carry_out() =>
        Assert.Throws<ArgumentException>(() => Run.Studio(1, Run.Fault(FaultKind.ElementFailed, Quillmere.Furnace, 1, 1)));

    static Instant TimeOf(DeviceMessage message)
    {
        using var json = System.Text.Json.JsonDocument.Parse(message.Payload);
        return InstantPattern.ExtendedIso.Parse(json.RootElement.GetProperty("time").GetString()!).Value;
    }
}
