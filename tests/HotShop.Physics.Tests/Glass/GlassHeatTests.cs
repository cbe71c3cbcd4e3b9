using FsCheck.Xunit;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class GlassHeatTests
{
    // Sharp and Ginther, J. Am. Ceram. Soc. 34 (1951) 260, window glass; coefficients from memory, values computed.
    [Theory, InlineData(100, 83), InlineData(482, 502), InlineData(1000, 1174), InlineData(1100, 1310), InlineData(1150, 1378), InlineData(1200, 1447), InlineData(1300, 1585), InlineData(1500, 1864)]
    public void Heat_content_follows_the_published_formula(double celsius, double kilojoulesPerKilogram) =>
        Assert.Equal(kilojoulesPerKilogram, GlassHeat.HeatContentKilojoulesPerKilogram(celsius), 0.5);

    // Independent check: heat capacities of Richet 1987 and Richet-Bottinga (from memory), computed: 1415 kJ/kg at 1150 °C.
    [Theory, InlineData(482, 483), InlineData(1000, 1200), InlineData(1150, 1415), InlineData(1200, 1487), InlineData(1400, 1773)]
    public void Another_authors_heat_capacities_agree_within_4_percent(double celsius, double kilojoulesPerKilogram) =>
        Assert.Equal(kilojoulesPerKilogram, GlassHeat.HeatContentKilojoulesPerKilogram(celsius), 0.04 * kilojoulesPerKilogram);

    [Fact]
    public void Cold_cullet_takes_0_379_kilowatt_hours_a_kilogram_to_reach_1150_degrees() =>
        Assert.Equal(0.379, (GlassHeat.HeatContentKilojoulesPerKilogram(1150) - GlassHeat.HeatContentKilojoulesPerKilogram(20)) / 3600, 0.0005);

    // 20 kg of cold cullet into 100 kg at 1200 °C with no heat supplied: 1025 °C, computed from the heat contents.
    [Fact]
    public void A_cold_charge_chills_the_pot_to_1025_degrees()
    {
        var mixed = (100 * GlassHeat.HeatContentKilojoulesPerKilogram(1200) + 20 * GlassHeat.HeatContentKilojoulesPerKilogram(20)) / 120;
        Assert.Equal(1025, GlassHeat.CelsiusAtHeatContent(mixed), 0.6);
    }

    [Property]
    public bool Degrees_to_heat_and_back_is_the_same_degree(ushort share)
    {
        var celsius = 1500.0 * share / ushort.MaxValue;
        return Math.Abs(GlassHeat.CelsiusAtHeatContent(GlassHeat.HeatContentKilojoulesPerKilogram(celsius)) - celsius) < 1e-8;
    }

    [Fact]
    public void Specific_heat_is_the_slope_of_the_heat_content() =>
        Assert.Equal(
            (GlassHeat.HeatContentKilojoulesPerKilogram(1150.01) - GlassHeat.HeatContentKilojoulesPerKilogram(1149.99)) / 0.02,
            GlassHeat.SpecificHeatKilojoulesPerKilogramKelvin(1150), 1e-6);

    [Theory, InlineData(-1), InlineData(1501), InlineData(double.NaN)]
    public void Outside_its_range_the_formula_is_refused(double celsius) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => GlassHeat.HeatContentKilojoulesPerKilogram(celsius));

    [Fact]
    public void The_studio_glass_anneals_50_degrees_below_window_glass()
    {
        Assert.Equal(495, GlassProfile.SoftStudioSodaLime.AnnealingPointCelsius);
        Assert.Equal(545, GlassProfile.WindowSodaLime.AnnealingPointCelsius);
        Assert.All([GlassProfile.SoftStudioSodaLime, GlassProfile.WindowSodaLime], glass =>
        {
            Assert.True(glass.StrainPointCelsius < glass.AnnealingPointCelsius);
            Assert.True(glass.AnnealingPointCelsius < glass.SofteningPointCelsius);
            Assert.True(glass.SofteningPointCelsius < glass.WorkingPointCelsius);
        });
    }
}
