using System.Text.Json;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Logbook;

/// <summary>The logbook is append-only: what was logged stays, and corrections are worked in when it is read.</summary>
public sealed class LogbookTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    async Task<LogResult> Log(string json, string appliance = "furnace-1")
    {
        var (entry, problem) = LogEntryForm.Check(JsonSerializer.Deserialize<JsonElement>(json), appliance);
        return entry is null ? new LogResult(null, false, problem) : await studio.Logbook.Add(entry, studio.Now, TestContext.Current.CancellationToken);
    }

    IReadOnlyList<LogEntry> InForce => studio.Logbook.InForce("furnace-1", OpenStudio.Start - Days(10), OpenStudio.Start + Days(10));

    [Fact]
    public async Task The_same_id_is_the_same_entry_however_often_and_whichever_way_it_comes()
    {
        var first = await Log("""{"entry":"gather","id":"g1","size":"large","who":"Mo"}""");
        Assert.True(first.IsNew);
        var again = await Log("""{"entry":"gather","id":"g1","size":"large","who":"Mo"}""");
        await studio.Send("furnace-1/log", """{"entry":"gather","id":"g1","size":"large","who":"Mo"}""");
        await studio.Restart();
        await studio.Send("furnace-1/log", """{"entry":"gather","id":"g1","size":"large","who":"Mo"}""");
        Assert.Equal((false, first.Entry!.Sequence), (again.IsNew, again.Entry!.Sequence));
        Assert.Single(InForce);
        Assert.Empty(studio.Refused);
    }

    [Fact]
    public async Task An_entry_by_MQTT_is_kept_with_who_and_when()
    {
        await studio.Send("furnace-1/log", """{"entry":"charge","id":"c1","who":"Mo","time":"2026-03-02T07:30:00Z","material":"cullet","mass":40,"unit":"lb"}""");
        var entry = Assert.Single(InForce);
        Assert.Equal(("charge", "Mo", Instant.FromUtc(2026, 3, 2, 7, 30)), (entry.Entry, entry.Who, entry.At));
    }

    [Fact]
    public async Task An_entry_struck_out_is_gone_from_what_holds_but_not_from_the_log()
    {
        await Log("""{"entry":"gather","id":"g1","size":"large"}""");
        await Log("""{"entry":"correction","id":"k1","of":"g1"}""");
        Assert.Empty(InForce);
        Assert.Equal(["g1", "k1"], studio.Logbook.Entries("furnace-1", OpenStudio.Start - Days(1), OpenStudio.Start + Days(1)).Select(e => e.Id));
        Assert.Contains("struck out", (await Log("""{"entry":"correction","of":"g1","count":3}""")).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_changes_only_the_fields_it_names_and_the_last_one_holds()
    {
        await Log("""{"entry":"gather","id":"g1","size":"large","count":2}""");
        await Log("""{"entry":"correction","of":"g1","count":3,"text":"miscounted"}""");
        await Log("""{"entry":"correction","of":"g1","count":4}""");
        var holds = Assert.Single(InForce);
        Assert.Equal("""{"size":"large","count":4}""", holds.Fields.ToJsonString());
    }

    [Fact]
    public async Task A_correction_moves_an_entry_to_when_it_was_and_to_whom_it_belongs()
    {
        await Log("""{"entry":"charge","id":"c1","who":"Mo","material":"cullet","mass":20,"unit":"kg"}""");
        await Log("""{"entry":"correction","of":"c1","at":"2026-03-01T20:30:00Z","by":"Ada","text":"logged in the morning"}""");
        var holds = Assert.Single(InForce);
        Assert.Equal((Instant.FromUtc(2026, 3, 1, 20, 30), "Ada"), (holds.At, holds.Who));
        Assert.Equal("""{"material":"cullet","mass":20,"unit":"kg"}""", holds.Fields.ToJsonString());
        Assert.Contains("future", (await Log("""{"entry":"correction","of":"c1","at":"2026-03-09T20:30:00Z"}""")).Refusal, StringComparison.Ordinal);
        Assert.Contains("'at'", (await Log("""{"entry":"correction","of":"c1","at":"yesterday"}""")).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_can_be_struck_out_itself()
    {
        await Log("""{"entry":"gather","id":"g1","size":"large"}""");
        await Log("""{"entry":"correction","id":"k1","of":"g1"}""");
        await Log("""{"entry":"correction","id":"k2","of":"k1"}""");
        Assert.Equal("g1", Assert.Single(InForce).Id);
        await Log("""{"entry":"correction","of":"k2"}""");
        Assert.Empty(InForce);
    }

    [Fact]
    public async Task A_field_is_taken_away_by_a_null_so_that_a_dip_can_be_told_from_the_rim()
    {
        await Log("""{"entry":"dip","id":"d1","glassDepth":30,"unit":"cm"}""");
        Assert.Contains("either", (await Log("""{"entry":"correction","of":"d1","rimToGlass":20}""")).Refusal, StringComparison.Ordinal);
        Assert.Null((await Log("""{"entry":"correction","of":"d1","glassDepth":null,"rimToGlass":20}""")).Refusal);
        Assert.Equal("""{"unit":"cm","rimToGlass":20}""", Assert.Single(InForce).Fields.ToJsonString());
    }

    [Theory]
    [InlineData("""{"entry":"gather","size":"huge"}""", "small, medium, large")]
    [InlineData("""{"entry":"tally","gathers":{"small":3,"huge":1}}""", "'huge' is no size")]
    [InlineData("""{"entry":"charge","material":"sand","massKg":10}""", "is no material; use one of")]
    [InlineData("""{"entry":"mode","mode":"on"}""", "heat-up")]
    [InlineData("""{"entry":"correction","of":"nothing"}""", "there is no entry 'nothing'")]
    [InlineData("""{"entry":"correction","of":"g1","size":"huge"}""", "'huge' is no size")]
    [InlineData("""{"entry":"correction","of":"g1","count":"three"}""", "count")]
    [InlineData("""{"entry":"correction","of":"k0","count":2}""", "correct 'g1'")]
    [InlineData("""{"entry":"gather","size":"large","time":"2026-03-02T09:00:00Z"}""", "in the future")]
    [InlineData("""{"entry":"gather","size":"large","time":"1970-01-01T00:00:05Z"}""", "clock")]
    public async Task What_makes_no_sense_is_refused_with_what_to_write(string json, string says)
    {
        await Log("""{"entry":"gather","id":"g1","size":"large"}""");
        await Log("""{"entry":"correction","id":"k0","of":"g1","count":5}""");
        Assert.Contains(says, (await Log(json)).Refusal, StringComparison.Ordinal);
        Assert.Single(InForce);
        await studio.Send("furnace-1/log", json);
        Assert.Contains(says, Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Glass_cannot_be_logged_where_there_is_no_pot_and_a_correction_belongs_to_its_appliance()
    {
        Assert.Contains("no pot", (await Log("""{"entry":"gather","size":"large"}""", "annealer-1")).Refusal, StringComparison.Ordinal);
        await Log("""{"entry":"gather","id":"g1","size":"large"}""");
        Assert.Contains("log the correction there", (await Log("""{"entry":"correction","of":"g1"}""", "annealer-1")).Refusal, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_17_a_retained_entry_is_taken_only_with_an_id()
    {
        await studio.Send("furnace-1/log", """{"entry":"gather","size":"large"}""", retained: true);
        Assert.Contains("retained", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
        for (var i = 0; i < 3; i++) await studio.Send("furnace-1/log", """{"entry":"gather","id":"g9","size":"large"}""", retained: true);
        Assert.Equal("g9", Assert.Single(InForce).Id);
    }

    [Fact]
    public async Task A_refused_entry_leaves_nothing_behind_and_a_failed_commit_neither()
    {
        await studio.Writer.Write(scope => scope.Execute("CREATE TRIGGER no BEFORE INSERT ON log_entry WHEN NEW.id = 'g2' BEGIN SELECT RAISE(ABORT, 'no'); END"), TestContext.Current.CancellationToken);
        var version = studio.Logbook.Version;
        await studio.Send("furnace-1/log", """{"entry":"mode","id":"g2","mode":"off"}""");
        Assert.Equal(version, studio.Logbook.Version);
        Assert.Equal(Monitor.Modes.Mode.Holding, studio.The<ModeBook>().Of("furnace-1").Mode);
        Assert.Equal(1, studio.Count(Counters.Refused));
        Assert.NotEmpty(studio.Errors);
    }
}
