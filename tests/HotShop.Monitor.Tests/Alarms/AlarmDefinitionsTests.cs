using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public class AlarmDefinitionsTests
{
    static IEnumerable<string> Ids(string appliance) => AlarmDefinitions.Of(TestStudio.Plan, AlarmPace.Real).Where(d => d.Appliance == appliance && d.Kind != AlarmKinds.Silent).Select(d => d.Id).Order();

    [Fact] public void Each_appliance_has_the_alarms_its_sensors_allow()
    {
        Assert.Equal(["furnace-1.flame-failure", "furnace-1.lock-out.lock-out", "furnace-1.overheat.crown"], Ids("furnace-1"));
        Assert.Equal(["furnace-2.falling-with-gas", "furnace-2.overheat.crown"], Ids("furnace-2"));
        Assert.Equal(["annealer-1.annealer-drift", "annealer-1.overheat.chamber"], Ids("annealer-1"));
        Assert.Equal(
            ["shop.carbon-monoxide-warning.carbon-monoxide", "shop.carbon-monoxide.carbon-monoxide", "shop.combustible-gas-warning.combustible-gas", "shop.combustible-gas.combustible-gas", "shop.lock-out.burner-fault", "shop.mains-lost.mains"],
            Ids("shop"));
    }

    [Fact] public void The_terminals_of_a_thermocouple_are_no_furnace() =>
        Assert.DoesNotContain(AlarmDefinitions.Of(TestStudio.Plan, AlarmPace.Real), d => d.Kind == AlarmKinds.Overheat && d.Channel == "terminal");

    [Fact] public void No_two_alarms_share_an_id()
    {
        var ids = AlarmDefinitions.Of(TestStudio.Plan, AlarmPace.Real).Select(d => d.Id).ToList();
        Assert.Equal(ids.Count, ids.Distinct().Count());
    }

    [Fact] public void Every_default_names_its_source_and_lies_where_a_limit_may_lie()
    {
        foreach (var row in AlarmDefaults.All)
        {
            Assert.NotEmpty(row.Source);
            Assert.InRange(row.Priority, 1, 3);
            if (row is not { Kind: AlarmKinds.Overheat, Appliance: { } kind }) continue;
            var (low, high) = PlausibleRange.OfOverheatLimit(kind);
            Assert.InRange(row.Limit!.Value, low, high);
        }
    }

    static IReadOnlyList<ConfigurationProblem> Problems(string kind, AlarmOptions options) =>
        ConfigurationCheck.Problems(TestStudio.Changed("furnace-1", a => a.WithAlarm(kind, options)), "hotshop.json");

    [Fact] public void A_kind_that_does_not_exist_is_named_with_those_that_do() =>
        Assert.Equal("hotshop.json: appliances[0].alarms.overheating: there is no such kind of alarm; write one of overheat, flame-failure, falling-with-gas, annealer-drift, silent, mains-lost, lock-out, carbon-monoxide, carbon-monoxide-warning, combustible-gas, combustible-gas-warning",
            Assert.Single(Problems("overheating", new())).ToString());

    [Theory]
    [InlineData("annealer-drift", "15 ppm", "'15 ppm' is no limit with a unit of this kind; write e.g. 15 K")]
    [InlineData("flame-failure", "15 K", "'15 K': this kind has no limit; leave it out")]
    [InlineData("carbon-monoxide", "70 K", "'70 K' is no limit with a unit of this kind; write e.g. 70 ppm")]
    [InlineData("overheat", "2300 °C", "2300 °C is 2300 °C (4172 °F): not plausible for this appliance; write one from 900 to 1400 °C (1652 to 2552 °F); is the unit right?")]
    public void A_limit_in_a_unit_that_does_not_belong_is_refused(string kind, string limit, string reason) =>
        Assert.Equal($"hotshop.json: appliances[0].alarms.{kind}.limit: {reason}", Assert.Single(Problems(kind, new() { Limit = limit })).ToString());

    [Theory, InlineData("annealer-drift", "27 °F", 15), InlineData("falling-with-gas", "108 °F/h", 60), InlineData("silent", "5 min", 300), InlineData("combustible-gas", "20 %LEL", 20), InlineData("carbon-monoxide", "70 ppm", 70)]
    public void Limits_are_understood_in_the_units_people_use(string kind, string typed, double canonical)
    {
        Assert.Empty(Problems(kind, new() { Limit = typed }));
        Assert.Equal(canonical, AlarmKinds.CanonicalLimit(kind, Limit.Parse(typed)!)!.Value, 9);
    }
}
