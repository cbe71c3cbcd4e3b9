using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Pot;

/// <summary>From log entries, in the units people use, to the glass in the pot.</summary>
public sealed class PotBookTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    Task Log(string json) => studio.Send("furnace-1/log", json);

    [Fact]
    public async Task A_charge_of_cullet_in_pounds_is_glass_in_kilograms()
    {
        var before = studio.Pot().State.MassKilograms;
        await Log("""{"entry":"charge","material":"cullet","mass":100,"unit":"lb"}""");
        // A pound is 0.45359237 kg, exactly; cullet is glass already.
        Assert.Equal(45.359237, studio.Pot().State.MassKilograms - before, 0.5);
        Assert.Equal(45.359237, studio.The<PotBook>().GlassMelted("furnace-1", OpenStudio.Start - Hours(1), studio.Now + Hours(1)).Value, 0.5);
    }

    [Theory]
    [InlineData("""{"entry":"dip","glassDepth":30,"unit":"cm"}""")]
    [InlineData("""{"entry":"dip","rimToGlass":15,"unit":"cm"}""")]
    [InlineData("""{"entry":"dip","rimToGlass":5.905511811,"unit":"in"}""")]
    [InlineData("""{"entry":"dip","glassDepth":11.81102362,"unit":"[in_i]"}""")]
    public async Task A_dip_says_the_same_in_centimetres_and_inches_from_the_bottom_and_from_the_rim(string dip)
    {
        await Log(dip);
        var state = studio.Pot().State;
        Assert.Equal(0.30, state.LevelMetres, 0.005);
        Assert.Equal(0.15, state.FreeboardMetres, 0.005);
        Assert.Equal(studio.Now, state.LastDipAt);
    }

    [Fact]
    public async Task Gathers_are_counted_by_size_and_count_or_by_mass()
    {
        var before = studio.Pot().State.MassKilograms;
        await Log("""{"entry":"gather","massKg":0.9,"count":2}""");
        Assert.Equal(1.8, before - studio.Pot().State.MassKilograms, 0.2);
        var one = studio.Pot().State.MassKilograms;
        await Log("""{"entry":"gather","size":"large","count":10}""");
        var taken = one - studio.Pot().State.MassKilograms;
        Assert.InRange(taken, 8 * 0.9, 8 * 1.4);
    }

    [Fact]
    public async Task A_corrected_gather_is_as_if_it_had_been_logged_right()
    {
        await using var right = OpenStudio.Open();
        await right.Send("furnace-1/log", """{"entry":"gather","id":"g1","size":"large","count":3}""");
        await Log("""{"entry":"gather","id":"g1","size":"large","count":30}""");
        await Log("""{"entry":"correction","of":"g1","count":3}""");
        Assert.Equal(right.Pot().State.MassKilograms, studio.Pot().State.MassKilograms, 12);
        await Log("""{"entry":"correction","of":"g1"}""");
        await using var untouched = OpenStudio.Open();
        Assert.Equal(untouched.Pot().State.MassKilograms, studio.Pot().State.MassKilograms, 12);
    }

    [Fact]
    public async Task The_past_does_not_know_what_was_logged_later()
    {
        await Log("""{"entry":"charge","material":"cullet","massKg":20}""");
        var then = studio.Pot().State.MassKilograms;
        var at = studio.Now;
        studio.Now += Hours(5);
        await Log("""{"entry":"ladle-out","massKg":50}""");
        Assert.Equal(then, studio.Pot(at).State.MassKilograms, 12);
        Assert.Equal(50, then - studio.Pot().State.MassKilograms, 1);
        await studio.Restart();
        Assert.Equal(then, studio.Pot(at).State.MassKilograms, 12);
    }

    [Fact]
    public async Task A_size_that_left_the_configuration_does_not_make_the_pot_unreadable()
    {
        await Log("""{"entry":"gather","size":"large","count":3}""");
        await Log("""{"entry":"tally","gathers":{"small":2,"large":1},"to":"2026-03-02T07:00:00Z"}""");
        var before = studio.Pot().State.MassKilograms;
        await studio.Restart(SomeStudio.With("furnace-1", a => a with { Pot = a.Pot! with { GatherKilograms = new Dictionary<string, double> { ["cup"] = 0.5 } } }));
        Assert.Equal(before, studio.Pot().State.MassKilograms, 1.0);
    }

    [Fact]
    public async Task The_glass_is_clear_so_many_hours_after_the_last_charge()
    {
        Assert.Null(studio.Pot().ReadyAt);
        await Log("""{"entry":"charge","material":"batch","massKg":20}""");
        Assert.Equal(studio.Now + Hours(12), studio.Pot().ReadyAt);
    }

    [Fact]
    public async Task Energy_per_kilogram_is_all_energy_over_all_glass_with_an_interval()
    {
        await studio.Send("furnace-1/gas-flow", Steady(10, Seconds(10), OpenStudio.Start, OpenStudio.Start + Hours(2)));
        await Log("""{"entry":"charge","material":"cullet","massKg":30,"time":"2026-03-02T09:00:00Z"}""");
        var energy = studio.Fuel("furnace-1", OpenStudio.Start, OpenStudio.Start + Hours(2)).Total;
        var glass = studio.The<PotBook>().GlassMelted("furnace-1", OpenStudio.Start, OpenStudio.Start + Hours(2));
        var perKilogram = energy / glass;
        // 20 m³ at (101325 + 2100) / 101325 and 10.55 kWh/m³, over 30 kg.
        Assert.Equal(20 * 103_425 / 101_325.0 * 10.55 / 30, perKilogram.Value, 0.05);
        Assert.True(perKilogram.Low95 < perKilogram.Value && perKilogram.Value < perKilogram.High95);
    }
}
