using System.Text.Json;
using System.Text.Json.Nodes;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.History;
using HotShop.Monitor.History.Figures;
using HotShop.Monitor.History.Replay;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.History;

/// <summary>The past computed again: the same to the bit where nothing was corrected, and only what depends on a correction where something was.</summary>
public sealed class ReplayTests
{
    /// <summary>Midnight in Berlin.</summary>
    static readonly Instant Midnight = Instant.FromUtc(2026, 3, 1, 23, 0);

    static OpenStudio Open(StudioConfiguration? configuration = null) => OpenStudio.Open(configuration, Midnight, c => c.AddAnnealing().AddAlarms().AddHistory().AddSingleton<DayStatement>());

    static DatedValue Until(string key, string json, string until) => new() { Key = key, Value = JsonSerializer.Deserialize<JsonElement>(json), Until = until };

    static Task<ReplayReport> Replay(OpenStudio studio, bool apply = false) => studio.The<StudioReplay>().Run(Midnight, Midnight + Days(3), apply, CancellationToken.None);

    static ReplayPart Part(ReplayReport report, string name) => report.Parts.Single(p => p.Name == name);

    /// <summary>Three days of gas, temperature and a charge, added up and stated as the nights do it.</summary>
    static async Task<OpenStudio> ThreeDays(StudioConfiguration? configuration = null)
    {
        var studio = Open(configuration);
        studio.Health.Report(HealthBoard.Broker, true, "messages are handed in directly", Midnight);
        var sent = Midnight;
        for (var day = 0; day < 3; day++)
        {
            // The night's work comes three hours after midnight, while readings go on.
            var until = Midnight + Days(day + 1) + Hours(3);
            await studio.Send("furnace-1/gas-flow", Every(Minutes(1), sent, until - Minutes(1)).Select(at => (at, 2 + Math.Sin(at.ToUnixTimeSeconds() / 1110.0))));
            await studio.Send("furnace-1/crown", Every(Minutes(1), sent, until - Minutes(1)).Select(at => (at, 1140 + 9 * Math.Sin(at.ToUnixTimeSeconds() / 1710.0))));
            await studio.Send("shop/meter", Every(Minutes(1), sent, until - Minutes(1)).Select(at => (at, Math.Round((at - Midnight).TotalMinutes * 0.04, 2))));
            sent = studio.Now = until;
            await studio.Logbook.Add(new WireLogEntry("furnace-1", "charge", $"charge-{day}", "Bo", Midnight + Hours(24 * day + 19), new JsonObject { ["material"] = "cullet", ["massKg"] = 40 }), studio.Now, CancellationToken.None);
            await studio.Logbook.Add(new WireLogEntry("furnace-1", "gather", $"gather-{day}", "Bo", Midnight + Hours(24 * day + 12), new JsonObject { ["size"] = "large", ["count"] = 30 }), studio.Now, CancellationToken.None);
            await studio.Move();
            Assert.Equal(1, await studio.The<DayStatement>().Run(studio.Now, default));
        }
        Assert.Empty(studio.Errors);
        return studio;
    }

    /// <summary>Readings every minute come from devices that are asked to send as often.</summary>
    static readonly StudioConfiguration Slow = Only(SomeStudio.With("furnace-1", a => a with { Channels = [.. a.Channels.Select(c => c with { IntervalSeconds = 60 })] }), "crown", "gas-flow", "meter");

    /// <summary>The studio with the channels that speak in a test: of the others there is nothing but silence.</summary>
    static StudioConfiguration Only(StudioConfiguration configuration, params string[] channels) => configuration with
    {
        Appliances = [.. configuration.Appliances.Select(a => a with { Channels = [.. a.Channels.Where(c => channels.Contains(c.Id))] }).Where(a => a.Channels.Count > 0)],
    };

    [Fact]
    public async Task Nothing_was_corrected_and_nothing_differs()
    {
        await using var studio = await ThreeDays(Slow);
        var report = await Replay(studio);
        Assert.Empty(report.Changes);
        Assert.Empty(report.Parts.SelectMany(p => p.Differences));
        Assert.Equal((3 * 24 * 3, 0), (Part(report, "hours").Checked, Part(report, "hours").Left));
        Assert.Equal(3 * 1440 * 3, Part(report, "minutes").Checked);
        // Energy, gas, pot and melted of the furnace; the shop's meter.
        Assert.InRange(Part(report, "figures of days").Checked, 3 * 4, 3 * 8);
    }

    [Fact]
    public async Task After_a_corrected_charge_only_what_depends_on_it_differs()
    {
        await using var studio = await ThreeDays(Slow);
        await studio.Logbook.Add(new WireLogEntry("furnace-1", "correction", "c", "Bo", studio.Now, new JsonObject { ["of"] = "charge-1", ["massKg"] = 46 }), studio.Now, CancellationToken.None);
        var report = await Replay(studio);
        Assert.All(report.Parts.Where(p => p.Name != "figures of days"), part => Assert.Equal(0, part.Differing));
        Assert.Equal(
            [("furnace-1 glassMeltedKg", Midnight + Days(1)), ("furnace-1 potKgAtMidnight", Midnight + Days(1)), ("furnace-1 potKgAtMidnight", Midnight + Days(2))],
            Part(report, "figures of days").Differences.Select(d => (d.What, d.At)).OrderBy(d => d.What, StringComparer.Ordinal).ThenBy(d => d.At));
        var melted = Part(report, "figures of days").Differences.Single(d => d.What.EndsWith("Melted", StringComparison.Ordinal) || d.What.Contains("glassMelted", StringComparison.Ordinal));
        Assert.Equal(46 / 40.0, double.Parse(melted.Now, System.Globalization.CultureInfo.InvariantCulture) / double.Parse(melted.Was, System.Globalization.CultureInfo.InvariantCulture), 5);
        Assert.True((await Replay(studio, apply: true)).IsApplied);
        Assert.Equal(0, (await Replay(studio)).Differing);
    }

    [Fact]
    public async Task A_row_that_is_wrong_is_found_with_what_follows_from_it_and_put_right()
    {
        await using var studio = await ThreeDays(Slow);
        var right = studio.Hours("furnace-1/gas-flow");
        var series = studio.Scalar("SELECT id FROM series WHERE channel = 'furnace-1/gas-flow'");
        await studio.Writer.Write(scope =>
        {
            scope.Execute("UPDATE hour SET amount = amount + 5 WHERE series = $series AND hour = $hour", ("$series", series), ("$hour", (Midnight + Hours(30)).ToMicroseconds()));
            scope.Execute("DELETE FROM minute WHERE series = $series AND minute = $minute", ("$series", series), ("$minute", (Midnight + Hours(40)).ToMicroseconds()));
        }, CancellationToken.None);
        var report = await Replay(studio);
        Assert.Equal((1, 1), (Part(report, "hours").Differing, Part(report, "minutes").Differing));
        // The figure was stated before the row went wrong: computed again from the readings it is the same.
        Assert.Equal(0, Part(report, "figures of days").Differing);
        await Replay(studio, apply: true);
        Assert.Equal(right, studio.Hours("furnace-1/gas-flow"));
        Assert.Equal(0, (await Replay(studio)).Differing);
    }

    [Fact]
    public async Task A_heating_value_put_right_changes_the_energy_and_not_the_gas()
    {
        await using var studio = await ThreeDays(Slow);
        await studio.Restart(Slow with { Dated = [Until("gas.grossKilowattHoursPerCubicMetre", "11.1", "2026-03-03")] });
        var report = await Replay(studio);
        Assert.All(report.Parts.Where(p => p.Name != "figures of days"), part => Assert.Equal(0, part.Differing));
        Assert.All(Part(report, "figures of days").Differences, d => Assert.Equal(("energyKwh", Midnight), (d.What.Split(' ')[1], d.At)));
        Assert.NotEmpty(Part(report, "figures of days").Differences);
        var change = Assert.Single(report.Changes);
        Assert.Equal(("gas.grossKilowattHoursPerCubicMetre", Midnight + Days(1), "11.1", "10.55"), (change.What, change.At, change.Was, change.Now));
    }

    [Fact]
    public async Task A_couple_of_another_type_makes_its_temperatures_again_and_keeps_the_voltages()
    {
        var configuration = Only(SomeStudio.Configuration, "couple", "terminal");
        await using var studio = Open(configuration);
        var day = Midnight + Hours(1);
        await studio.Send("furnace-1/terminal", Steady(30, Seconds(10), day, day + Hours(2)));
        await studio.Send("furnace-1/couple", Every(Seconds(10), day, day + Hours(2)).Select((at, i) => (at, 11.1 + i % 10 / 100.0)));
        studio.Now = Midnight + Days(3) + Hours(3);
        await studio.Move();
        await studio.Restart(configuration with { Dated = [Until("appliances.furnace-1.channels.couple.thermocouple", "\"R\"", "2026-03-10")] });
        var report = await Replay(studio);
        Assert.Equal(721, Part(report, "temperatures from voltages and calibrations").Differing);
        await Replay(studio, apply: true);
        // The type functions themselves are checked against NIST Monograph 175 elsewhere; here that the right one was taken.
        var expected = ((JunctionResult.Celsius)Thermocouple.OfType(ThermocoupleType.R).Junction(11.1, 30)).Value;
        Assert.Equal(expected, studio.Raw("furnace-1/couple")[0].Value);
        Assert.Empty((await Replay(studio)).Parts.SelectMany(p => p.Differences));
        Assert.Equal(721, studio.Scalar("SELECT count(*) FROM reading r JOIN series s ON s.id = r.series WHERE s.unit = 'mV'"));
        Assert.Equal(expected, studio.Hours("furnace-1/couple")[0].Min);
    }

    [Fact]
    public async Task Alarms_are_decided_again_as_they_were_and_a_limit_of_the_past_shows_what_it_would_have_done()
    {
        await using var studio = Open();
        studio.Health.Report(HealthBoard.Broker, true, "messages are handed in directly", Midnight);
        for (var at = Midnight; at < Midnight + Hours(5); at += Seconds(10))
        {
            studio.Now = at;
            var minutes = (at - Midnight).TotalMinutes;
            // Too hot from 01:00 to 01:30; the crown silent from 02:00 to 02:20; the flame out from 03:00 to 03:30; warmer than usual from 04:00 to 04:20.
            if (minutes is < 120 or > 140) await studio.Send("furnace-1/crown", (at, minutes is >= 60 and < 90 ? 1330.0 : minutes is >= 240 and < 260 ? 1260 : 1140));
            if ((at - Midnight).TotalSeconds % 60 == 0) await studio.Send("furnace-1/flame", (at, minutes is >= 180 and < 210 ? 0.0 : 1));
            await studio.Send("furnace-1/gas-flow", (at, 2.5));
            await studio.Tick();
        }
        studio.Now = Midnight + Days(3) + Hours(3);
        await studio.Move();
        // Channels that never spoke are silent from the start, which a replay cannot know the moment of; the rest is the history.
        var history = studio.The<IAlarmDesk>().History(Midnight, studio.Now).Where(o => o.Kind != AlarmKinds.Silent || o.AlarmId.Contains("crown", StringComparison.Ordinal)).Select(o => o.AlarmId).Order(StringComparer.Ordinal).ToList();
        Assert.Equal(["furnace-1.flame-failure", "furnace-1.overheat.crown", "furnace-1.silent.crown"], history);
        var report = await Replay(studio);
        Assert.Empty(Part(report, "alarms").Differences);
        Assert.True(Part(report, "alarms").Checked >= 3);

        var before = studio.Scalar("SELECT count(*) FROM alarm_transition");
        await studio.Restart(SomeStudio.Configuration with { Dated = [Until("appliances.furnace-1.alarms.overheat.limit", "\"1250 °C\"", "2026-03-10")] });
        report = await Replay(studio, apply: true);
        var difference = Assert.Single(Part(report, "alarms").Differences);
        Assert.Equal(("furnace-1.overheat.crown", "not in the history"), (difference.What, difference.Was));
        Assert.InRange(difference.At, Midnight + Minutes(240), Midnight + Minutes(241));
        Assert.Equal(before, studio.Scalar("SELECT count(*) FROM alarm_transition"));
        Assert.Equal(0, studio.Scalar("SELECT count(*) FROM outbox"));
    }
}
