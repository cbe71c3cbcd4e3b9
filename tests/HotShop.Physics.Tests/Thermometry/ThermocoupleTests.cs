using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class ThermocoupleTests
{
    // NIST Monograph 175 (1993): emf in mV, reference junction at 0 °C, printed to 0.001 mV.
    public static TheoryData<ThermocoupleType, string> PrintedTables => new()
    {
        { ThermocoupleType.K, "-200:-5.891 -100:-3.554 0:0.000 25:1.000 100:4.096 200:8.138 300:12.209 400:16.397 500:20.644 600:24.905 700:29.129 800:33.275 900:37.326 1000:41.276 1100:45.119 1150:46.995 1200:48.838 1300:52.410 1372:54.886" },
        { ThermocoupleType.N, "-200:-3.990 -100:-2.407 25:0.659 100:2.774 200:5.913 300:9.341 400:12.974 500:16.748 600:20.613 800:28.455 1000:36.256 1100:40.087 1150:41.976 1200:43.846 1250:45.694 1300:47.513" },
        { ThermocoupleType.R, "-50:-0.226 25:0.141 100:0.647 200:1.469 400:3.408 500:4.471 600:5.583 800:7.950 1000:10.506 1064:11.361 1100:11.850 1150:12.535 1200:13.228 1300:14.629 1400:16.040 1500:17.451 1600:18.849 1768:21.101" },
        { ThermocoupleType.S, "-50:-0.236 25:0.143 100:0.646 200:1.441 400:3.259 500:4.233 600:5.239 800:7.345 1000:9.587 1064:10.332 1100:10.757 1150:11.351 1200:11.951 1300:13.159 1400:14.373 1500:15.582 1600:16.777 1768:18.693" },
        { ThermocoupleType.B, "21:-0.003 42:0.000 50:0.002 100:0.033 200:0.178 300:0.431 400:0.787 500:1.242 600:1.792 800:3.154 1000:4.834 1100:5.780 1150:6.276 1200:6.786 1300:7.848 1400:8.956 1500:10.099 1600:11.263 1700:12.433 1820:13.820" },
        { ThermocoupleType.J, "-210:-8.095 -100:-4.633 25:1.277 100:5.269 200:10.779 300:16.327 400:21.848 500:27.393 600:33.102 700:39.132 760:42.919 900:51.877 1000:57.953 1200:69.553" },
        { ThermocoupleType.T, "-200:-5.603 -100:-3.379 -50:-1.819 25:0.992 50:2.036 100:4.279 150:6.704 200:9.288 250:12.013 300:14.862 350:17.819 400:20.872" },
        { ThermocoupleType.E, "-200:-8.825 -100:-5.237 25:1.495 100:6.319 200:13.421 300:21.036 400:28.946 500:37.005 600:45.093 700:53.112 800:61.017 900:68.787 1000:76.373" },
    };

    [Theory, MemberData(nameof(PrintedTables))]
    public void Every_type_gives_the_printed_table(ThermocoupleType type, string table)
    {
        foreach (var point in table.Split(' '))
        {
            var parts = point.Split(':');
            var (celsius, printed) = (Number(parts[0]), Number(parts[1]));
            Assert.Equal(printed, Thermocouple.OfType(type).Millivolts(celsius)!.Value, 0.00051);
        }
    }

    // Exact inverse of the direct functions of NIST Monograph 175, to 0.0001 °C.
    [Theory]
    [InlineData(ThermocoupleType.K, 10, 246.2295), InlineData(ThermocoupleType.K, 30, 720.8311), InlineData(ThermocoupleType.K, 45, 1096.8648), InlineData(ThermocoupleType.K, 50, 1232.0473)]
    [InlineData(ThermocoupleType.N, 20, 584.2468), InlineData(ThermocoupleType.N, 40, 1097.7202), InlineData(ThermocoupleType.J, 30, 546.2072)]
    [InlineData(ThermocoupleType.R, 10, 961.5172), InlineData(ThermocoupleType.R, 15, 1326.3461), InlineData(ThermocoupleType.S, 10, 1035.6090), InlineData(ThermocoupleType.S, 15, 1451.7958)]
    [InlineData(ThermocoupleType.B, 3, 779.6788), InlineData(ThermocoupleType.B, 10, 1491.4228), InlineData(ThermocoupleType.E, 60, 787.0423)]
    public void A_voltage_gives_the_exact_temperature(ThermocoupleType type, double millivolts, double celsius) =>
        Assert.Equal(celsius, Thermocouple.OfType(type).JunctionCelsius(millivolts, terminalCelsius: 0)!.Value, 0.0001);

    // Worked examples of cold-junction compensation, computed from NIST Monograph 175.
    [Theory]
    [InlineData(ThermocoupleType.K, 45.000, 23.4, 1121.65), InlineData(ThermocoupleType.N, 40.000, 25.0, 1115.08), InlineData(ThermocoupleType.S, 11.300, 28.0, 1159.16)]
    [InlineData(ThermocoupleType.R, 12.000, 28.0, 1122.60), InlineData(ThermocoupleType.B, 6.200, 30.0, 1142.26)]
    public void Terminals_in_a_warm_room_are_compensated_in_volts(ThermocoupleType type, double millivolts, double terminalCelsius, double celsius) =>
        Assert.Equal(celsius, Assert.IsType<JunctionResult.Celsius>(Thermocouple.OfType(type).Junction(millivolts, terminalCelsius)).Value, 0.005);

    // Sensitivity in µV/°C at 1150 °C, computed from NIST Monograph 175.
    [Theory]
    [InlineData(ThermocoupleType.K, 37.2), InlineData(ThermocoupleType.N, 37.6), InlineData(ThermocoupleType.R, 13.8), InlineData(ThermocoupleType.S, 11.9), InlineData(ThermocoupleType.B, 10.1)]
    public void Sensitivity_at_pot_temperature_is_as_computed(ThermocoupleType type, double microvoltsPerDegree) =>
        Assert.Equal(microvoltsPerDegree, 1000 * Thermocouple.OfType(type).MillivoltsPerDegree(1150)!.Value, 0.051);

    [Theory, EachType]
    public void Degrees_to_volts_and_back_is_the_same_degree(ThermocoupleType type)
    {
        var couple = Thermocouple.OfType(type);
        for (var celsius = couple.LowestJunctionCelsius; celsius <= couple.HighestJunctionCelsius; celsius += 0.37)
            Assert.Equal(celsius, couple.JunctionCelsius(couple.Millivolts(celsius)!.Value, 0)!.Value, 1e-5);
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

    static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
