using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Money;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Money;

/// <summary>What a furnace burnt up to its own holding power is holding, what it burnt above is melting; other modes stay what they are.</summary>
public sealed class PurposeSplitTests
{
    static readonly StudioPlan plan = PlanBuilder.Build(AccountTests.Steady(prices: AccountTests.Plain), Path.GetTempPath());
    static readonly LocalDate day = new(2026, 3, 2);
    static readonly Instant midnight = plan.Zone.AtStartOfDay(day).ToInstant();

    static Dictionary<Purpose, double> Split(double holdingKilowatts, Func<int, double> kilowattHoursOfHour, params ModeStretch[] modes)
    {
        var hours = Enumerable.Range(0, 24).Select(h => new StudioUse(midnight + Duration.FromHours(h), midnight + Duration.FromHours(h + 1), [Share(kilowattHoursOfHour(h))], default, default, 1, 0)).ToList();
        var split = new PurposeSplit(plan, hours, _ => modes.Length > 0 ? modes : [new ModeStretch(midnight, midnight + Duration.FromHours(24), Mode.Holding)], new Dictionary<string, double> { ["furnace-1"] = holdingKilowatts });
        return split.Of(day, Share(Enumerable.Range(0, 24).Sum(kilowattHoursOfHour))).ToDictionary(s => s.Purpose, s => Math.Round(s.KilowattHours, 6));
    }

    static FuelShare Share(double kilowattHours) => new("furnace-1", EnergyKind.Gas, Origin.Measured, Estimate.Exact(kilowattHours), 0, 0);

    [Fact]
    public void A_day_with_a_charge_has_what_it_burnt_above_holding_as_melting()
    {
        // 20 kW held, 30 kW for the eight hours of a charge.
        var parts = Split(20, hour => hour is >= 18 or < 2 ? 30 : 20);
        Assert.Equal((480.0, 80.0), (parts[Purpose.Holding], parts[Purpose.Melting]));
    }

    [Fact]
    public void A_fire_that_goes_up_and_down_around_its_holding_power_melts_nothing() =>
        Assert.Equal(480.0, Assert.Single(Split(20, hour => hour % 2 == 0 ? 15 : 25)).Value);

    [Fact]
    public void A_day_below_the_holding_power_is_all_holding() => Assert.Equal(Purpose.Holding, Assert.Single(Split(20, _ => 12)).Key);

    [Fact]
    public void Heating_up_is_not_taken_for_melting()
    {
        var noon = midnight + Duration.FromHours(12);
        var parts = Split(20, hour => hour < 12 ? 50 : 20, new ModeStretch(midnight, noon, Mode.HeatUp), new ModeStretch(noon, midnight + Duration.FromHours(24), Mode.Holding));
        Assert.Equal((600.0, 240.0, false), (parts[Purpose.HeatUp], parts[Purpose.Holding], parts.ContainsKey(Purpose.Melting)));
    }
}
