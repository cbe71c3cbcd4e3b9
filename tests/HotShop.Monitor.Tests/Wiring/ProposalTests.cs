using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using HotShop.Monitor.Wiring;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Wiring;

/// <summary>What a strange device is guessed to be. Magnitudes and names are common practice.</summary>
public class ProposalTests
{
    static readonly StudioPlan plan = PlanBuilder.Build(SomeStudio.Configuration, Path.GetTempPath());

    static IReadOnlyList<PayloadValue> Values(string payload) => PayloadValue.Of(Encoding.UTF8.GetBytes(payload));

    static (Quantity? Quantity, string? Unit, string? Appliance) Guess(string topic, string payload, string? pointer = null) =>
        ChannelProposal.Of(topic, Values(payload).Single(v => v.Pointer == pointer), plan) is { } p ? ((Quantity?)p.Quantity, p.Unit, p.Appliance) : default;

    [Theory]
    [InlineData("furnace/x", "1148", null, Quantity.Temperature, null, "furnace-1")]
    [InlineData("lab/3", "1148.6", null, Quantity.Temperature, null, "furnace-1")]
    [InlineData("lab/3", "2098", null, Quantity.Temperature, "[degF]", "furnace-1")]
    [InlineData("glory/temp_f", "2012", null, Quantity.Temperature, "[degF]", "glory-hole-1")]
    [InlineData("annealer2/probe", "482", null, Quantity.Temperature, null, "annealer-2")]
    [InlineData("zigbee/annealer 1", """{"temperature":481.5,"battery":97}""", "/temperature", Quantity.Temperature, null, "annealer-1")]
    [InlineData("zigbee/plug", """{"state":"ON","power":3120}""", "/power", Quantity.Power, "W", null)]
    [InlineData("plug/status", """{"aenergy":{"total":1203.4}}""", "/aenergy/total", Quantity.Energy, null, null)]
    [InlineData("shop/gas", """{"m3":1203.442}""", "/m3", Quantity.GasVolume, null, "shop")]
    [InlineData("glory-hole-1/flame", "on", null, Quantity.Flame, null, "glory-hole-1")]
    [InlineData("zigbee/annealer-1-door", """{"contact":true}""", "/contact", Quantity.Door, null, "annealer-1")]
    [InlineData("x/y", """{"value":21.5,"unit":"mbar"}""", null, Quantity.Pressure, null, null)]
    public void A_value_is_guessed_from_its_words_its_unit_and_its_size(string topic, string payload, string? at, Quantity quantity, string? unit, string? appliance) =>
        Assert.Equal((quantity, unit, appliance), Guess(topic, payload, at));

    [Theory]
    [InlineData("zigbee/door", """{"linkquality":130,"battery":97}""", "/linkquality")]
    [InlineData("lab/3", "21.5", null)]
    [InlineData("air", """{"co2":800}""", "/co2")]
    public void What_says_nothing_is_not_guessed(string topic, string payload, string? at) => Assert.Null(Guess(topic, payload, at).Quantity);

    [Fact]
    public void Every_place_with_a_value_or_a_time_is_found_by_its_pointer() =>
        Assert.Equal(["/when", "/sensors/0/t~1top", "/sensors/1/a~0b", "/on"],
            Values("""{"when":"2026-03-01T02:13:05Z","sensors":[{"t/top":"1148.6","name":"crown"},{"a~b":3}],"on":true,"nothing":null}""").Select(v => v.Pointer));

    [Fact]
    public void Our_own_object_and_a_backlog_of_them_need_no_pointer()
    {
        Assert.Equal((null, 1148.6), Assert.Single(Values("""{"value":1148.6,"unit":"Cel","time":"2026-03-01T02:13:05Z"}""")) is var one ? (one.Pointer, one.Number) : default);
        Assert.Null(Assert.Single(Values("""[{"value":1,"time":"2026-03-01T02:13:05Z"},{"value":2,"time":"2026-03-01T02:13:15Z"}]""")).Pointer);
    }

    [Theory]
    [InlineData(""), InlineData("\u0000\u0001"), InlineData("hello"), InlineData("{"), InlineData("[]"), InlineData("null"), InlineData("NaN")]
    public void A_payload_that_says_nothing_has_no_values(string payload) => Assert.Empty(Values(payload));

    [Fact]
    public void A_hostile_payload_is_bounded()
    {
        Assert.Empty(PayloadValue.Of([0xFF, 0xFE, 0x31]));
        Assert.True(Values($"[{string.Join(',', Enumerable.Range(0, 3000))}]").Count <= 40);
        Assert.Empty(Values(new string('[', 5000)));
    }

    [Fact]
    public void A_name_that_is_taken_gets_a_number()
    {
        var proposal = ChannelProposal.Of("furnace-1/crown", Values("1148")[0], plan)!;
        Assert.Equal(("furnace-1", "temperature"), (proposal.Appliance, proposal.Channel));
        Assert.Equal("chamber-2", ChannelProposal.Of("annealer-1/chamber", Values("""{"value":480,"unit":"Cel"}""")[0], PlanBuilder.Build(SomeStudio.With("annealer-1",
            a => a with { Channels = [.. a.Channels, SomeStudio.Channel("temperature", "temperature")] }), Path.GetTempPath()))!.Channel.Replace("temperature", "chamber", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(new double[] { 0, 10, 20, 30.2, 40, 50.1 }, 10.0, false)]
    [InlineData(new double[] { 0, 28, 57, 85, 113 }, 30.0, false)]
    [InlineData(new double[] { 0, 2, 400, 1900, 1903, 9000 }, 400.0, true)]
    [InlineData(new double[] { 0, 10 }, null, false)]
    public void The_habit_of_a_device_is_read_from_its_last_messages(double[] seconds, double? atLeast, bool isOnChange)
    {
        var habit = TopicHabit.Of([.. seconds.Select(s => OpenStudio.Start + Duration.FromSeconds(s))]);
        Assert.Equal((atLeast is null, isOnChange), (habit.IntervalSeconds is null, habit.IsOnChange));
        if (atLeast is { } least) Assert.InRange(habit.IntervalSeconds!.Value, least * 0.95, least * 4);
    }
}
