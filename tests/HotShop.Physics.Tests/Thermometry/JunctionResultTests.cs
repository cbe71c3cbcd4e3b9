using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class JunctionResultTests
{
    static readonly Thermocouple K = Thermocouple.OfType(ThermocoupleType.K);
    static readonly Thermocouple B = Thermocouple.OfType(ThermocoupleType.B);

    [Fact]
    public void A_B_couple_in_a_cold_furnace_says_below_250_and_gives_no_number()
    {
        var result = Assert.IsType<JunctionResult.OutOfRange>(B.Junction(0.05, 25));
        Assert.Contains("below 250 °C", result.Reason, StringComparison.Ordinal);
        Assert.Null(B.JunctionCelsius(0.05, 25));
    }

    [Theory, InlineData(78.0), InlineData(-78.0), InlineData(double.PositiveInfinity)]
    public void An_input_driven_to_its_end_is_an_open_circuit(double millivolts) =>
        Assert.IsType<JunctionResult.OpenCircuit>(K.Junction(millivolts, 25));

    [Fact]
    public void A_little_above_the_top_of_the_range_is_out_of_range_not_open() =>
        Assert.IsType<JunctionResult.OutOfRange>(K.Junction(K.HighestJunctionMillivolts + 0.1, 0));

    [Fact]
    public void The_last_degree_of_the_range_still_counts() =>
        Assert.Equal(1372, K.JunctionCelsius(K.HighestJunctionMillivolts, 0)!.Value, 1e-6);

    [Fact]
    public void No_voltage_at_all_is_out_of_range() => Assert.IsType<JunctionResult.OutOfRange>(K.Junction(double.NaN, 25));

    [Fact]
    public void Terminals_beyond_the_functions_are_named_in_the_reason()
    {
        var result = Assert.IsType<JunctionResult.OutOfRange>(B.Junction(6.2, -20));
        Assert.Contains("terminals at -20 °C", result.Reason, StringComparison.Ordinal);
    }

    // 5 % above the highest voltage of the type, where a couple's reading ends and an input's burn-out detection begins.
    [Theory, InlineData(1.0499, false), InlineData(1.0501, true)]
    public void What_is_taken_for_an_open_circuit_begins_five_per_cent_above_the_range(double factor, bool isOpen) =>
        Assert.Equal(isOpen, K.Junction(factor * K.HighestJunctionMillivolts, 0) is JunctionResult.OpenCircuit);

    // A couple wired the wrong way round reads about 2·terminals − t, here far below the range of type K.
    [Fact]
    public void A_reversed_K_couple_in_a_hot_furnace_is_out_of_range_and_said_to_be_the_wrong_way_round()
    {
        var result = Assert.IsType<JunctionResult.OutOfRange>(K.Junction(-(K.Millivolts(1150)!.Value - K.Millivolts(25)!.Value), 25));
        Assert.Contains("the other way round it would be 1150 °C", result.Reason, StringComparison.Ordinal);
    }
}
