using HotShop.Simulator.Truth;

namespace HotShop.Simulator.Tests;

/// <summary>Thirty days without faults on several seeds, once for all tests of the class.</summary>
public sealed class OrdinaryMonths
{
    public IReadOnlyList<RunSummary> Summaries { get; } = [.. Enumerable.Range(1, 4).AsParallel().Select(seed => RunSummary.Of(Run.Options(seed, sampleSeconds: 300), days: 30))];
}

public class OrdinaryMonthTests(OrdinaryMonths months, ITestOutputHelper output) : IClassFixture<OrdinaryMonths>
{
    // Common practice: 60 to 150 ft³/h held, 18 to 45 kW gross; one published account of a 1000 lb furnace gives at least 84 ft³/h,
    // 25.5 kW.
    [Fact]
    public void Holding_the_furnace_takes_what_furnaces_take() =>
        All(s => Assert.InRange(s.Spreads["furnace held: gross kW"].Mean, 18, 45));

    // Batch melting in pots and day tanks 12.5 to 30 GJ/t (Roempp 1995, in IPCC AR4 WG III 7.4.5.3); a small studio that mostly holds:
    // expect 10 to 60.
    [Fact]
    public void The_fuel_per_kilogram_is_a_studios() =>
        All(s => Assert.InRange(s.KilowatthoursPerKilogram * 3.6, 10, 60));

    [Fact]
    public void A_held_furnace_keeps_within_15_kelvin_of_its_setpoint() =>
        All(s =>
        {
            Assert.InRange(s.Spreads["furnace held: deviation K"].Lowest, -15, 15);
            Assert.InRange(s.Spreads["furnace held: deviation K"].Highest, -15, 15);
            Assert.True(s.Spreads["furnace held: deviation K"].Count > 30 * 240);
        });

    [Fact]
    public void The_crown_falls_when_cold_glass_is_charged_and_never_overheats() =>
        All(s =>
        {
            Assert.InRange(s.Spreads["furnace-1 crown °C, charging"].Lowest, 1040, 1120);
            Assert.InRange(s.Spreads["furnace-1 crown °C, charging"].Highest, 1195, 1225);
            Assert.InRange(s.Spreads["furnace-1 crown °C, working"].Lowest, 1100, 1150);
        });

    // Common practice: 1150 to 1260 °C; 100 to 300 ft³/h. 1 ft³/h is 0.0283 m³/h, with 39.4 MJ/m³ 0.310 kW gross.
    [Fact]
    public void The_glory_hole_works_at_its_heat_and_burns_what_glory_holes_burn() =>
        All(s =>
        {
            Assert.InRange(s.Spreads["glory-hole-1 chamber °C, working"].Lowest, 1100, 1250);
            Assert.InRange(s.Spreads["glory-hole-1 chamber °C, working"].Highest, 1150, 1250);
            Assert.InRange(s.Spreads["glory-hole-1 gross kW, working"].Mean / 0.310, 100, 300);
        });

    [Theory, InlineData("annealer-1"), InlineData("annealer-2")]
    public void The_annealers_follow_their_curves_within_3_kelvin(string annealer) =>
        All(s =>
        {
            Assert.InRange(s.Spreads[$"{annealer} on its curve: deviation K"].Lowest, -3, 3);
            Assert.InRange(s.Spreads[$"{annealer} on its curve: deviation K"].Highest, -3, 3);
        });

    [Fact]
    public void The_pot_is_charged_before_it_runs_empty_and_never_over_the_rim() =>
        All(s =>
        {
            Assert.InRange(s.Spreads["pot kg"].Lowest, 35, 120);
            Assert.InRange(s.Spreads["pot kg"].Highest, 120, 176);
        });

    [Fact]
    public void The_air_of_the_shop_stays_below_any_alarm() =>
        All(s => Assert.InRange(s.Spreads["carbon monoxide ppm"].Highest, 0, 15));

    void All(Action<RunSummary> check)
    {
        foreach (var summary in months.Summaries)
        {
            output.WriteLine(summary.ToString());
            check(summary);
        }
    }
}
