using HotShop.Physics.Statistics;
using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class TemperatureUncertaintyTests
{
    static readonly TemperatureUncertainty S = new()
    {
        Couple = ThermocoupleType.S, Class = ToleranceClass.Find("iec-2"), StatedCelsius = 0.5, InputMicrovolts = 10, TerminalsCelsius = 1, DriftCelsius = 3,
    };

    [Theory, InlineData(700), InlineData(1150), InlineData(1500)]
    public void Both_ways_to_the_standard_uncertainty_agree(double celsius)
    {
        Assert.Equal(S.At(celsius, 25)!.StandardUncertainty, S.StandardCelsius(celsius, 25)!.Value, 1e-12);
        Assert.Equal(S.At(celsius, 25, 0.6)!.StandardUncertainty, S.StandardCelsius(celsius, 25, 0.6)!.Value, 1e-12);
    }

    [Fact]
    public void A_class_alone_is_an_interval_of_95_per_cent_of_its_limits()
    {
        var budget = new TemperatureUncertainty { Couple = ThermocoupleType.K, Class = ToleranceClass.Find("iec-2") }.At(1150, 25)!;
        Assert.Equal(0.95 * 8.625, budget.HalfWidth95, 1e-3);
    }

    [Fact]
    public void A_calibration_takes_the_place_of_the_class_and_of_what_the_maker_states()
    {
        var calibrated = S with { InputMicrovolts = 0, TerminalsCelsius = 0, DriftCelsius = 0 };
        Assert.Equal(0.6, calibrated.StandardCelsius(1150, 25, 0.6)!.Value, 1e-12);
        Assert.Equal(double.Hypot(0.6, 3 / Math.Sqrt(3)), (calibrated with { DriftCelsius = 3 }).StandardCelsius(1150, 25, 0.6)!.Value, 1e-12);
        Assert.Equal(double.Hypot(2.875, 0.5) / Math.Sqrt(3), calibrated.StandardCelsius(1150, 25)!.Value, 1e-12);
    }

    [Fact]
    public void Of_a_sensor_that_is_no_couple_the_makers_statement_counts()
    {
        var sensor = new TemperatureUncertainty { StatedCelsius = 2, DriftCelsius = 1 };
        Assert.Equal(Math.Sqrt(5.0 / 3), sensor.StandardCelsius(500, 25)!.Value, 1e-12);
        Assert.Equal(double.Hypot(0.6, 1 / Math.Sqrt(3)), sensor.StandardCelsius(500, 25, 0.6)!.Value, 1e-12);
    }

    [Fact]
    public void Where_nothing_is_known_nothing_is_claimed()
    {
        Assert.Null(new TemperatureUncertainty().StandardCelsius(1150, 25));
        // Drift from an accuracy that nobody stated is no accuracy.
        Assert.Null(new TemperatureUncertainty { DriftCelsius = 3 }.StandardCelsius(1150, 25));
        Assert.Null(new TemperatureUncertainty { Class = ToleranceClass.Find("iec-2") }.StandardCelsius(1150, 25));
        // Class 2 of type S ends at 1600 °C, its function at 1768.1 °C.
        Assert.Null(S.StandardCelsius(1650, 25));
        Assert.NotNull(S.StandardCelsius(1650, 25, 0.6));
        Assert.Null(S.StandardCelsius(1800, 25, 0.6));
        Assert.Null(S.At(1150, -60));
    }

    // Type B with terminals at 10 °C, where its function falls by 0.128 µV/°C: a degree there moves a reading at 1150 °C (10.07 µV/°C) by 0.0127 °C.
    [Fact]
    public void Terminals_where_the_function_falls_count_by_the_size_of_what_they_do()
    {
        var couple = new TemperatureUncertainty { Couple = ThermocoupleType.B, Class = ToleranceClass.Find("iec-2"), TerminalsCelsius = 1 };
        Assert.Equal(0.0127 / Math.Sqrt(3), couple.At(1150, 10)!.Contributions.Single(c => c.Name == "terminals").StandardUncertainty, 0.0001);
    }

    // 10 µV are 0.010 mV.
    [Fact]
    public void An_input_counts_by_what_its_microvolts_are_in_degrees() =>
        Assert.Equal(0.010 / Thermocouple.OfType(ThermocoupleType.S).MillivoltsPerDegree(1150)!.Value / Math.Sqrt(3), S.At(1150, 25)!.Contributions.Single(c => c.Name == "input").StandardUncertainty, 1e-9);

    [Fact]
    public void Below_nothing_no_error_can_be() => Assert.Throws<ArgumentOutOfRangeException>(() => S with { DriftCelsius = -1 });

    // Twenty thousand couples, each with errors drawn from its own limits: the interval holds the truth as often as it says.
    [Theory, InlineData(null), InlineData(0.8)]
    public void The_interval_holds_the_truth_95_times_in_100(double? calibration)
    {
        var random = new Random(20260301);
        var (held, draws) = (0, 20_000);
        var budget = S.At(1150, 25, calibration)!;
        for (var i = 0; i < draws; i++)
            if (Math.Abs(budget.Contributions.Sum(c => c.Sensitivity * c.Draw(random))) <= budget.HalfWidth95) held++;
        Assert.InRange((double)held / draws, 0.945, 0.955);
    }
}
