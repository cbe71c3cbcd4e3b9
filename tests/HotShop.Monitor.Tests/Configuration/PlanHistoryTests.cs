using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Configuration;

/// <summary>What was in force when: changes count from their day, additions for the past too, and dated values put the past right.</summary>
public class PlanHistoryTests
{
    static readonly Instant First = OpenStudio.Start, Changed = OpenStudio.Start + Days(10);

    static StudioConfiguration Gross(double kilowattHours) => SomeStudio.Configuration with { Gas = new() { GrossKilowattHoursPerCubicMetre = kilowattHours } };

    static PlanHistory History(StudioConfiguration today, params (Instant, StudioConfiguration)[] kept) => new(PlanBuilder.Build(today, "/"), kept);

    static double GrossAt(PlanHistory history, Instant at) => history.At(at).Configuration.Gas.InForce().GrossKilowattHoursPerCubicMetre!.Value;

    static DatedValue Dated(string key, string json, string? from, string? until) => new() { Key = key, Value = JsonSerializer.Deserialize<JsonElement>(json), From = from, Until = until };

    [Fact]
    public void A_changed_heating_value_leaves_the_past_alone()
    {
        var history = History(Gross(11.2), (First, Gross(10.55)), (Changed, Gross(11.2)));
        Assert.Equal(10.55, GrossAt(history, First - Days(900)));
        Assert.Equal(10.55, GrossAt(history, Changed - Duration.Epsilon));
        Assert.Equal(11.2, GrossAt(history, Changed));
        Assert.Same(history.Today, history.At(Changed + Days(900)));
        Assert.Equal([(First, Changed), (Changed, Changed + Days(1))], history.Between(First, Changed + Days(1)).Select(s => (s.From, s.To)));
        Assert.Empty(history.Between(First, First));
    }

    [Fact]
    public void A_new_phone_number_begins_no_new_stretch()
    {
        var history = History(Gross(10.55) with { People = [new() { Id = "mo", Name = "Mo", Outlets = [] }] }, (First, Gross(10.55)), (Changed, Gross(10.55) with { People = [new() { Id = "mo", Name = "Mo", Outlets = [] }] }));
        Assert.Same(history.Today, Assert.Single(history.Between(First, Changed + Days(1))).Plan);
    }

    [Fact]
    public void A_channel_that_was_added_is_known_for_the_past_and_one_that_was_changed_is_not()
    {
        var before = SomeStudio.With("furnace-1", a => a with { Pot = null, Channels = [.. a.Channels.Where(c => c.Id != "flame").Select(c => c.Id == "couple" ? c with { Thermocouple = "R" } : c)] });
        var history = History(SomeStudio.Configuration, (First, before with { Appliances = [.. before.Appliances.Where(a => a.Id != "annealer-3")] }), (Changed, SomeStudio.Configuration));
        var then = history.At(First);
        Assert.NotNull(then.Channels.Find("furnace-1/flame"));
        Assert.NotNull(then.Channels.Find("annealer-3/energy"));
        Assert.Equal(46, then.Appliance("furnace-1")!.Options.Pot!.DiameterCentimetres);
        Assert.Equal(Physics.Thermometry.ThermocoupleType.R, then.Channels.Find("furnace-1/couple")!.Thermocouple);
        Assert.Equal(Physics.Thermometry.ThermocoupleType.S, history.Channel("furnace-1/couple", Changed)!.Thermocouple);
    }

    [Fact]
    public void A_channel_that_was_taken_away_is_known_where_it_was()
    {
        var history = History(SomeStudio.With("furnace-1", a => a with { Channels = [.. a.Channels.Where(c => c.Id != "flame")] }), (First, SomeStudio.Configuration),
            (Changed, SomeStudio.With("furnace-1", a => a with { Channels = [.. a.Channels.Where(c => c.Id != "flame")] })));
        Assert.NotNull(history.Channel("furnace-1/flame", First));
        Assert.Null(history.Channel("furnace-1/flame", Changed));
    }

    [Fact]
    public void The_heating_value_of_each_bill_holds_in_its_month_from_midnight_of_the_studio()
    {
        var today = Gross(10.55) with
        {
            Dated = [Dated("gas.grossKilowattHoursPerCubicMetre", "11.05", "2026-01-01", "2026-02-01"), Dated("gas.grossKilowattHoursPerCubicMetre", "11.12", "2026-02-01", "2026-03-01")],
        };
        var history = History(today, (First, today));
        // Midnight in Berlin is 23:00 UTC in winter.
        var february = Instant.FromUtc(2026, 1, 31, 23, 0);
        Assert.Equal(10.55, GrossAt(history, Instant.FromUtc(2025, 12, 31, 22, 59)));
        Assert.Equal(11.05, GrossAt(history, february - Duration.Epsilon));
        Assert.Equal(11.12, GrossAt(history, february));
        Assert.Equal(10.55, GrossAt(history, Instant.FromUtc(2026, 2, 28, 23, 0)));
    }

    [Fact]
    public void What_was_typed_wrong_is_put_right_in_what_was_kept_and_nothing_else_is_touched()
    {
        var wrong = SomeStudio.With("furnace-1", "couple", c => c with { Thermocouple = "R" }) with { Gas = new() { GrossKilowattHoursPerCubicMetre = 9.5 } };
        var today = SomeStudio.Configuration with { Gas = new() { GrossKilowattHoursPerCubicMetre = 11.2 }, Dated = [Dated("appliances.furnace-1.channels.couple.thermocouple", "\"S\"", null, "2026-03-12")] };
        var history = History(today, (First, wrong), (Changed, today));
        Assert.Equal(Physics.Thermometry.ThermocoupleType.S, history.Channel("furnace-1/couple", First)!.Thermocouple);
        Assert.Equal(9.5, GrossAt(history, First));
    }

    [Fact]
    public void A_limit_of_the_past_can_be_given_where_the_file_keeps_the_usual_one()
    {
        var today = SomeStudio.Configuration with { Dated = [Dated("appliances.furnace-1.alarms.overheat.limit", "\"1250 °C\"", null, "2026-03-12")] };
        Assert.Empty(ConfigurationCheck.Problems(today, "hotshop.json"));
        Assert.Equal("1250 °C", History(today, (First, today)).At(First).Appliance("furnace-1")!.Options.Alarms["overheat"].Limit);
    }

    public static TheoryData<string, string, object> Slips { get; } = new()
    {
        { "dated[0].from", "'March'", Dated("gas.altitudeMetres", "500", "March", "2026-03-01") },
        { "dated[0]", "ends on 2026-01-01", Dated("gas.altitudeMetres", "500", "2026-02-01", "2026-01-01") },
        { "dated[0].key", "'people.mo'", Dated("people.mo", "5", null, "2026-01-01") },
        { "dated[0].key", "no 'appliances.furnace-9'", Dated("appliances.furnace-9.position", "5", null, "2026-01-01") },
        { "dated[0].value", "does not fit", Dated("gas.altitudeMetres", "\"high\"", null, "2026-01-01") },
        { "dated[0].value", "does not fit", Dated("gas.colour", "5", null, "2026-01-01") },
        { "dated[0].value", "39.3 is out of range", Dated("gas.grossKilowattHoursPerCubicMetre", "39.3", null, "2026-01-01") },
        { "dated[0].until", "would hold today", Dated("gas.altitudeMetres", "500", "2026-01-01", null) },
    };

    [Theory, MemberData(nameof(Slips))]
    public void A_slip_in_a_dated_value_is_named_with_its_place(string where, string what, object dated)
    {
        var problem = Assert.Single(ConfigurationCheck.Problems(SomeStudio.Configuration with { Dated = [(DatedValue)dated] }, "hotshop.json"));
        Assert.EndsWith(where, problem.Where, StringComparison.Ordinal);
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
    }
}
