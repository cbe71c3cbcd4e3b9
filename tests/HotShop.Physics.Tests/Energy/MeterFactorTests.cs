using HotShop.Physics.Energy;
using Xunit;

namespace HotShop.Physics.Tests.Energy;

/// <summary>What a metered volume is multiplied with, against the factors that gas suppliers print.</summary>
public class MeterFactorTests
{
    const double Feet = 0.3048;

    /// <summary>Air pressure of American gas measurement manuals, psia: 14.54 · (55096 - (h - 361)) / (55096 + (h - 361)), h in feet (AGA; from memory).</summary>
    static double AgaPsia(double feet) => 14.54 * (55_096 - (feet - 361)) / (55_096 + (feet - 361));

    // A quarter-psi meter billed with 1.0000 at 5,000 ft: 1 / 0.8508 = 17.5 % more than passed (from the table above).
    [Fact]
    public void A_quarter_psi_meter_at_five_thousand_feet_counts_17_percent_too_much()
    {
        Assert.Equal(0.175, 1 / Factor(AgaPsia(5000) * EnergyUnits.PascalsPerPsi) - 1, 0.0005);
        // The standard atmosphere is 0.5 % thinner there than the manuals' air.
        Assert.Equal(0.175, 1 / Factor(Atmosphere.PressurePascals(5000 * Feet)) - 1, 0.006);

        static double Factor(double airPascals) => GasVolume.BaseFactor(0.25 * EnergyUnits.PascalsPerPsi, airPascals, BaseConditions.Us.Celsius, BaseConditions.Us);
    }

    [Theory, InlineData(-500.5), InlineData(11_001), InlineData(double.NaN)]
    public void The_standard_atmosphere_ends_where_it_ends(double metres) => Assert.Throws<ArgumentOutOfRangeException>(() => Atmosphere.PressurePascals(metres));

    [Theory, InlineData(-500), InlineData(11_000)]
    public void Up_to_its_ends_the_atmosphere_is_known(double metres) => Assert.InRange(Atmosphere.PressurePascals(metres), 22_000, 108_000);

    // An uncompensated diaphragm meter counts 1 % more for each 2.9 K or takes 1 % less for each 10 mbar (ideal gas at 288 K and 1013 mbar, computed).
    [Fact]
    public void Three_degrees_or_ten_millibar_are_one_percent()
    {
        var factor = GasVolume.BaseFactor(0, Atmosphere.StandardPascals, 15, BaseConditions.Iso13443);
        Assert.Equal(0.01, factor / GasVolume.BaseFactor(0, Atmosphere.StandardPascals, 17.9, BaseConditions.Iso13443) - 1, 0.0001);
        Assert.Equal(0.01, GasVolume.BaseFactor(1000, Atmosphere.StandardPascals, 15, BaseConditions.Iso13443) / factor - 1, 0.0002);
    }
}
