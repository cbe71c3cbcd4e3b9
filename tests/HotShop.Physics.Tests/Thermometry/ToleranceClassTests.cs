using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests.Thermometry;

public class ToleranceClassTests
{
    // IEC 60584-1:2013, classes 1 to 3, and ASTM E230/E230M-12, special and standard, as makers of wire print them: range in °C, limit at its low
    // end and at its high end, and the temperature at which the limit in °C gives way to the percentage.
    [Theory]
    [InlineData("iec-1", "K N", -40, 1000, 1.5, 4, 375), InlineData("iec-1", "J", -40, 750, 1.5, 3, 375), InlineData("iec-1", "E", -40, 800, 1.5, 3.2, 375)]
    [InlineData("iec-1", "T", -40, 350, 0.5, 1.4, 125), InlineData("iec-1", "R S", 0, 1600, 1, 2.5, 1100)]
    [InlineData("iec-2", "K N", -40, 1200, 2.5, 9, 333.3), InlineData("iec-2", "J", -40, 750, 2.5, 5.625, 333.3), InlineData("iec-2", "E", -40, 900, 2.5, 6.75, 333.3)]
    [InlineData("iec-2", "T", -40, 350, 1, 2.625, 133.3), InlineData("iec-2", "R S", 0, 1600, 1.5, 4, 600), InlineData("iec-2", "B", 600, 1700, 1.5, 4.25, 600)]
    [InlineData("iec-3", "K N E", -200, 40, 3, 2.5, -166.7), InlineData("iec-3", "T", -200, 40, 3, 1, -66.7), InlineData("iec-3", "B", 600, 1700, 4, 8.5, 800)]
    [InlineData("astm-special", "R S", 0, 1480, 0.6, 1.48, 600), InlineData("astm-special", "B", 870, 1700, 2.175, 4.25, 870)]
    [InlineData("astm-special", "K N", 0, 1260, 1.1, 5.04, 275), InlineData("astm-special", "J", 0, 760, 1.1, 3.04, 275)]
    [InlineData("astm-special", "E", 0, 870, 1, 3.48, 250), InlineData("astm-special", "T", 0, 370, 0.5, 1.48, 125)]
    [InlineData("astm-standard", "R S", 0, 1480, 1.5, 3.7, 600), InlineData("astm-standard", "B", 870, 1700, 4.35, 8.5, 870)]
    [InlineData("astm-standard", "K N", 0, 1260, 2.2, 9.45, 293.3), InlineData("astm-standard", "J", 0, 760, 2.2, 5.7, 293.3)]
    [InlineData("astm-standard", "E", 0, 870, 1.7, 4.35, 340), InlineData("astm-standard", "T", 0, 370, 1, 2.775, 133.3)]
    public void A_class_allows_what_is_printed_and_says_nothing_outside(string name, string types, double from, double to, double atFrom, double atTo, double turn)
    {
        var one = ToleranceClass.Find(name)!;
        foreach (var type in types.Split(' ').Select(Enum.Parse<ThermocoupleType>))
        {
            Assert.True(one.Covers(type));
            Assert.Equal(atFrom, one.LimitCelsius(type, from)!.Value, 1e-9);
            Assert.Equal(atTo, one.LimitCelsius(type, to)!.Value, 1e-9);
            Assert.Null(one.LimitCelsius(type, from - 0.01));
            Assert.Null(one.LimitCelsius(type, to + 0.01));
            // On one side of the turn the limit is flat, on the other it moves.
            bool IsFlat(double celsius) => Math.Abs(one.LimitCelsius(type, celsius + 0.1)!.Value - one.LimitCelsius(type, celsius)!.Value) < 1e-9;
            if (turn > from && turn < to) Assert.NotEqual(IsFlat(turn - 1), IsFlat(turn + 1));
        }
    }

    [Fact]
    public void Above_1000_degrees_class_1_of_K_is_claimed_as_class_2()
    {
        var first = ToleranceClass.Find("iec-1")!;
        Assert.Null(first.LimitCelsius(ThermocoupleType.K, 1150));
        Assert.Equal(8.625, first.ClaimableCelsius(ThermocoupleType.K, 1150)!.Value, 1e-9);
        Assert.Equal(4, first.ClaimableCelsius(ThermocoupleType.K, 1000)!.Value, 1e-9);
        Assert.Null(first.ClaimableCelsius(ThermocoupleType.K, 1250));
        Assert.Null(ToleranceClass.Find("iec-2")!.ClaimableCelsius(ThermocoupleType.K, 1250));
        // Type B has no class 1, so nothing of its name can be claimed.
        Assert.Null(first.ClaimableCelsius(ThermocoupleType.B, 1150));
    }

    [Fact]
    public void A_class_that_nobody_knows_is_not_found() => Assert.Null(ToleranceClass.Find("iec-4"));
}
