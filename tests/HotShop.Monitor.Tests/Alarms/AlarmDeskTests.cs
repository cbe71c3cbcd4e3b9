using HotShop.Monitor.Alarms;
using HotShop.Monitor.Health;
using HotShop.Monitor.Live;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using Microsoft.Data.Sqlite;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public sealed class AlarmDeskTests : IDisposable
{
    const string Crown = "furnace-1/crown";
    readonly DeskStudio studio = new();

    public void Dispose() => studio.Dispose();

    async Task<AlarmOccurrence> Overheat()
    {
        await studio.SendEvery(10, 8, Crown, 1302);
        return Assert.Single(studio.Desk.Current);
    }

    [Fact] public async Task An_alarm_is_stored_in_the_transaction_of_its_reading_and_told_there()
    {
        var raised = await Overheat();
        Assert.Equal([AlarmChange.Raised], studio.Told.Select(t => t.Change));
        Assert.Equal(raised, Assert.Single(studio.Desk.History(Story.Start, studio.Now)));
        Assert.Equal(1, studio.Store.Count("SELECT count(*) FROM alarm_transition WHERE value = 1302 AND limit_value = 1290"));
    }

    [Fact] public async Task Standing_pages_hear_of_it_after_the_commit()
    {
        using var closed = new CancellationTokenSource();
        var page = studio.Live.Subscribe(closed.Token);
        var raised = await Overheat();
        Assert.True(page.TryRead(out var change));
        Assert.Equal(("alarm", raised.Id), (change!.Kind, change.Key));
        Assert.Equal("unacknowledged", Assert.IsType<AlarmItem>(change.Content).State);
    }

    [Fact] public async Task A_commit_that_fails_leaves_memory_rows_and_listeners_as_they_were()
    {
        await studio.SendEvery(10, 6, Crown, 1302);
        var (memory, rows) = (studio.Desk.Memory, studio.Store.Count("SELECT count(*) FROM alarm_pending"));
        studio.Store.IsFull = true;
        studio.Pass(10);
        await Assert.ThrowsAsync<IOException>(() => studio.Send(Crown, 1302));

        Assert.Same(memory, studio.Desk.Memory);
        Assert.Equal(rows, studio.Store.Count("SELECT count(*) FROM alarm_pending"));
        Assert.Empty(studio.Desk.Current);
        Assert.Empty(studio.Told);

        studio.Store.IsFull = false;
        await studio.Send(Crown, 1302);
        Assert.Single(studio.Told);
    }

    [Fact] public async Task A_condition_that_lasts_is_written_when_it_changes_and_not_with_each_reading()
    {
        await studio.SendEvery(10, 2, Crown, 1285);   // the channel and its surroundings are known
        var before = studio.Store.Count("SELECT total_changes()");
        await studio.SendEvery(10, 200, Crown, 1285);
        Assert.Equal(before, studio.Store.Count("SELECT total_changes()"));
        await studio.SendEvery(10, 6, Crown, 1302);
        Assert.Equal(before + 2, studio.Store.Count("SELECT total_changes()"));
    }

    [Fact] public async Task A_pending_condition_goes_on_through_a_restart()
    {
        await studio.SendEvery(10, 4, Crown, 1302);
        studio.Restart();
        await studio.SendEvery(10, 2, Crown, 1302);
        Assert.Empty(studio.Told);
        await studio.SendEvery(10, 1, Crown, 1302);
        Assert.Equal(Story.Start + Duration.FromSeconds(10), Assert.Single(studio.Told).Occurrence.Since);
    }

    [Fact] public async Task After_a_restart_an_alarm_stands_as_it_stood_and_is_not_told_again()
    {
        var raised = await Overheat();
        await studio.Desk.Acknowledge(raised.Id, "Ida", CancellationToken.None);
        var before = Assert.Single(studio.Desk.Current);
        studio.Restart();
        await studio.SendEvery(10, 5, Crown, 1302);
        Assert.Equal(before, Assert.Single(studio.Desk.Current));
        Assert.Equal([AlarmChange.Raised, AlarmChange.Acknowledged], studio.Told.Select(t => t.Change));
    }

    [Fact] public async Task Somebody_has_it_once_whoever_says_so_later()
    {
        var raised = await Overheat();
        var first = await studio.Desk.Acknowledge(raised.Id, "Ida", CancellationToken.None);
        studio.Pass(5);
        var second = await studio.Desk.Acknowledge(raised.Id, "Jon", CancellationToken.None);
        Assert.Equal(("Ida", AlarmState.Acknowledged), (first!.AcknowledgedBy, first.State));
        Assert.Equal(first, second);
        Assert.Single(studio.Told, t => t.Change == AlarmChange.Acknowledged);
    }

    [Fact] public async Task Taking_an_old_occurrence_never_silences_a_new_one()
    {
        var old = await Overheat();
        await studio.SendEvery(10, 10, Crown, 1200);
        await studio.SendEvery(10, 10, Crown, 1302);
        var late = await studio.Desk.Acknowledge(old.Id, "Ida", CancellationToken.None);
        Assert.Equal((AlarmState.Normal, "Ida"), (late!.State, late.AcknowledgedBy));
        Assert.Equal(AlarmState.Unacknowledged, Assert.Single(studio.Desk.Current).State);
        Assert.Equal(late, studio.Desk.Find(old.Id));
        await studio.Desk.Acknowledge(old.Id, "Jon", CancellationToken.None);
        Assert.Single(studio.Told, t => t.Change == AlarmChange.Acknowledged);
    }

    [Fact] public async Task There_is_nothing_to_take_under_a_wrong_id() => Assert.Null(await studio.Desk.Acknowledge("furnace-1.overheat.crown~x", "Ida", CancellationToken.None));

    [Fact] public async Task History_is_never_rewritten()
    {
        await Overheat();
        foreach (var attempt in new[] { "UPDATE alarm_occurrence SET priority = 3", "DELETE FROM alarm_transition", "UPDATE alarm_transition SET at = 0", "DELETE FROM alarm_occurrence" })
            Assert.Contains("never rewritten", Assert.Throws<SqliteException>(() => studio.Store.Run(attempt)).Message, StringComparison.Ordinal);
    }

    [Fact] public async Task A_backlog_never_rings()
    {
        for (var i = 0; i < 100; i++) await studio.Send(Crown, 1302, ReadingMarks.Late, isLive: false, ageSeconds: 14_400 - i * 10);
        Assert.Empty(studio.Told);
    }

    [Fact] public async Task An_alarm_whose_sensor_is_silent_stands_and_says_that_it_is_unverified()
    {
        await Overheat();
        Assert.False(studio.Desk.Current[0].IsUnverified);
        studio.Pass(300);
        Assert.True(Assert.Single(studio.Desk.Current).IsUnverified);
    }

    [Fact] public async Task A_mode_set_by_one_tap_counts_from_the_next_moment()
    {
        studio.SetMode("glory-hole-1", Mode.Working);
        for (var i = 0; i < 100; i++) { await studio.SendEvery(10, 1, "glory-hole-1/flame", 0); }
        Assert.Equal("glory-hole-1.flame-failure", Assert.Single(studio.Told).Occurrence.AlarmId);
        studio.SetMode("glory-hole-1", Mode.Off);
        await studio.Tick();
        Assert.Equal(AlarmState.ReturnedUnacknowledged, studio.Desk.Current.Single(a => a.Kind == "flame-failure").State);
    }

    [Fact] public async Task Trouble_on_the_health_board_becomes_an_alarm()
    {
        studio.Health.Report(HealthBoard.Disk, false, "3 % left: make room", studio.Now);
        for (var i = 0; i < 130; i++) { studio.Pass(1); await studio.Tick(); }
        Assert.Equal("The monitor has trouble with its disk: 3 % left: make room", studio.Desk.Current.Single(a => a.AlarmId == "service.service-trouble.disk").Words.Sentence);
    }

    [Fact] public async Task A_contact_that_reports_changes_is_known_again_after_a_restart()
    {
        await studio.Send("shop/burner-fault", 1);
        studio.Pass(5);
        studio.Restart();
        studio.Pass(6);
        await studio.Tick();
        Assert.Contains(studio.Told, t => t.Occurrence.AlarmId == "shop.lock-out.burner-fault");
    }

    [Fact] public async Task An_alarm_that_the_configuration_no_longer_has_ends_at_the_next_start()
    {
        await Overheat();
        studio.Restart(TestStudio.With("furnace-1", a => a.WithAlarm("overheat", new() { Enabled = false })));
        await studio.Tick();
        Assert.Equal(["furnace-1.overheat.crown"], studio.Told.Where(t => t.Change == AlarmChange.Cleared).Select(t => t.Occurrence.AlarmId));
        studio.Restart();
        await studio.Tick();
        Assert.Single(studio.Told, t => t.Change == AlarmChange.Cleared);
    }
}
