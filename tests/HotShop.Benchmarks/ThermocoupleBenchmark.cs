using HotShop.Physics.Thermometry;
using NodaTime;

namespace HotShop.Benchmarks;

/// <summary>A voltage turned into degrees, for every type over its whole range, and all that is derived of one reading: compensated, corrected by the
/// calibration in force, with its standard uncertainty.</summary>
static class ThermocoupleBenchmark
{
    /// <summary>Readings spread over a type's range; a power of two, so that the index costs nothing.</summary>
    const int Readings = 4096;

    public static async Task Run(TextWriter lines)
    {
        foreach (var type in Enum.GetValues<ThermocoupleType>())
        {
            var couple = Thermocouple.OfType(type);
            var celsius = Spread(couple.LowestJunctionCelsius, couple.HighestJunctionCelsius);
            var millivolts = Spread(couple.LowestJunctionMillivolts, couple.HighestJunctionMillivolts);
            await lines.WriteLineAsync($"type {type}, °C to mV             {PerCall.Of(i => couple.Millivolts(celsius[i % Readings])!.Value)}");
            await lines.WriteLineAsync($"type {type}, mV to °C             {PerCall.Of(i => couple.JunctionCelsius(millivolts[i % Readings], 0)!.Value)}");
        }
        foreach (var type in new[] { ThermocoupleType.K, ThermocoupleType.N, ThermocoupleType.R, ThermocoupleType.S })
            await lines.WriteLineAsync($"type {type}, all of one reading   {PerCall.Of(Derived(type))}");
    }

    /// <summary>What the service does of a reading in millivolts between 1000 and 1150 °C.</summary>
    static Func<int, double> Derived(ThermocoupleType type)
    {
        var couple = Thermocouple.OfType(type);
        var from = Instant.FromUtc(2026, 3, 1, 0, 0);
        var calibrations = new CalibrationHistory([new(from, new([new(950, -1), new(1100, -2.5), new(1200, -4)]), 0.6, null), new(from + Duration.FromDays(90), new([new(1100, 1)]), null, null)]);
        var uncertainty = new TemperatureUncertainty { Couple = type, Class = ToleranceClass.Find("iec-2"), InputMicrovolts = 10, TerminalsCelsius = 1, DriftCelsius = 3 };
        var millivolts = Spread(couple.Millivolts(1000)!.Value, couple.Millivolts(1150)!.Value);
        var at = from + Duration.FromDays(7);
        return i =>
        {
            var read = couple.JunctionCelsius(millivolts[i % Readings] - 0.15, 25)!.Value;
            var corrected = calibrations.Corrected(read, at);
            return corrected + uncertainty.StandardCelsius(corrected, 25)!.Value;
        };
    }

    static double[] Spread(double from, double to) => [.. Enumerable.Range(0, Readings).Select(i => double.Lerp(from, to, (i * 1597 % Readings + 0.5) / Readings))];
}
