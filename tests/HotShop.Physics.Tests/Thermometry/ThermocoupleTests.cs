using System.Globalization;
using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class ThermocoupleTests
{
    // NIST Monograph 175 (1993): where each reference function begins, changes and ends, and where its inverse functions begin. °C.
    [Theory]
    [InlineData(ThermocoupleType.B, 250, "0 630.615 1820"), InlineData(ThermocoupleType.E, -200, "-270 0 1000"), InlineData(ThermocoupleType.J, -210, "-210 760 1200")]
    [InlineData(ThermocoupleType.K, -200, "-270 0 1372"), InlineData(ThermocoupleType.N, -200, "-270 0 1300"), InlineData(ThermocoupleType.T, -200, "-270 0 400")]
    [InlineData(ThermocoupleType.R, -50, "-50 1064.18 1664.5 1768.1"), InlineData(ThermocoupleType.S, -50, "-50 1064.18 1664.5 1768.1")]
    public void Functions_begin_change_and_end_where_they_are_printed(ThermocoupleType type, double lowestJunction, string printed)
    {
        var stretches = printed.Split(' ').Select(text => double.Parse(text, CultureInfo.InvariantCulture)).ToArray();
        var couple = Thermocouple.OfType(type);
        Assert.Equal(stretches, couple.StretchesCelsius);
        Assert.Equal(lowestJunction, couple.LowestJunctionCelsius);
        Assert.Null(couple.Millivolts(stretches[0] - 0.001));
        Assert.Null(couple.Millivolts(stretches[^1] + 0.001));
        Assert.NotNull(couple.Millivolts(stretches[0]));
        Assert.NotNull(couple.Millivolts(stretches[^1]));
    }

    [Theory, EachType]
    public void Degrees_to_volts_and_back_is_the_same_degree(ThermocoupleType type)
    {
        var couple = Thermocouple.OfType(type);
        for (var celsius = couple.LowestJunctionCelsius; celsius <= couple.HighestJunctionCelsius; celsius += 0.37)
            Assert.Equal(celsius, couple.JunctionCelsius(couple.Millivolts(celsius)!.Value, 0)!.Value, 1e-8);
    }

    [Theory, EachType]
    public void Sensitivity_is_what_a_small_step_of_the_function_shows(ThermocoupleType type)
    {
        var couple = Thermocouple.OfType(type);
        const double step = 0.01;
        for (var celsius = couple.StretchesCelsius[0] + 0.7; celsius < couple.HighestJunctionCelsius - 1; celsius += 7.3)
            Assert.Equal((couple.Millivolts(celsius + step)!.Value - couple.Millivolts(celsius - step)!.Value) / (2 * step), couple.MillivoltsPerDegree(celsius)!.Value, 2e-8);
    }

    [Theory, EachType]
    public void More_volts_are_never_fewer_degrees(ThermocoupleType type)
    {
        var couple = Thermocouple.OfType(type);
        var before = double.NegativeInfinity;
        var step = (couple.HighestJunctionMillivolts - couple.LowestJunctionMillivolts) / 20_000;
        for (var i = 1; i < 20_000; i++)
        {
            var celsius = couple.JunctionCelsius(couple.LowestJunctionMillivolts + i * step, 0)!.Value;
            Assert.True(celsius > before, $"type {type} at {celsius} °C");
            before = celsius;
        }
    }
}
