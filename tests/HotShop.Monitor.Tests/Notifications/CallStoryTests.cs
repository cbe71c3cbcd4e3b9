using HotShop.Monitor.Notifications;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class CallStoryTests : IDisposable
{
    readonly TestNight night = new();

    public void Dispose() => night.Dispose();

    [Fact]
    public async Task An_alarm_calls_the_person_who_has_the_phone_once()
    {
        await night.Overheat();
        await night.Pass(4.9);
        Assert.Equal(["ana call #1"], night.Sent);
    }

    [Fact]
    public async Task It_calls_again_after_the_repeat_time_and_then_the_next_person_as_well()
    {
        await night.Overheat();
        await night.Pass(5);
        await night.Pass(5);
        Assert.Equal(["ana call #2", "ana call #3", "ben call #3"], night.Sent.TakeLast(3));
        Assert.StartsWith("Nobody has it yet", night.Outlet.Taken[^2].Message.Title, StringComparison.Ordinal);
        Assert.StartsWith("You are next to call", night.Outlet.Taken[^1].Message.Title, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_everybody_was_called_all_are_called_until_somebody_has_it()
    {
        await night.Overheat();
        for (var minutes = 0; minutes < 30; minutes += 5) await night.Pass(5);
        Assert.Equal(["ana call #7", "ben call #7"], night.Sent.Order().Where(s => s.EndsWith("#7", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task Nothing_is_repeated_once_somebody_has_it()
    {
        var id = await night.Overheat();
        await night.Pass(6);
        await night.Alarms.Take(id, "Ana");
        var before = night.Sent.Count;
        await night.Pass(60);
        Assert.Equal(before, night.Sent.Count);
    }

    [Fact]
    public async Task Who_was_woken_too_is_told_that_somebody_has_it()
    {
        var id = await night.Overheat();
        await night.Pass(10);
        await night.Alarms.Take(id, "Ana");
        await night.Send();
        Assert.Equal("ben held #4", night.Sent[^1]);
        Assert.Contains("Ana has it since 02:24", night.Outlet.Taken[^1].Message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_it_ends_all_who_were_told_hear_it_exactly_once()
    {
        var id = await night.Overheat();
        await night.Pass(10);
        await night.Alarms.Take(id, "Ana");
        await night.Alarms.Clear(id);
        await night.Alarms.Clear(id);
        await night.Pass(60);
        Assert.Equal(["ana closing #5", "ben closing #5"], night.Sent.Where(s => s.Contains("closing", StringComparison.Ordinal)).Order());
    }

    [Fact]
    public async Task An_alarm_that_ends_by_itself_is_not_repeated_but_says_that_nobody_had_it()
    {
        var id = await night.Overheat();
        await night.Pass(2);
        await night.Alarms.Clear(id);
        await night.Pass(60);
        Assert.Equal(["ana call #1", "ana closing #2"], night.Sent);
        Assert.Contains("Nobody said they had it", night.Outlet.Taken[^1].Message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Priority_3_waits_for_the_morning_and_nobody_hears_of_its_end()
    {
        var id = await night.Overheat(priority: 3);
        await night.Pass(30);
        await night.Alarms.Clear(id);
        await night.Pass(1);
        Assert.Empty(night.Sent);
        Assert.Equal(1, night.Store.Count("SELECT count(*) FROM call_story WHERE reason = 'WaitsForMorning'"));
    }

    [Fact]
    public async Task What_belongs_to_a_larger_trouble_calls_nobody_until_it_stands_alone()
    {
        var alarm = FakeAlarms.Overheat(night.Now);
        await night.Alarms.Raise(alarm with { InhibitedBy = "shop.mains-lost" });
        await night.Pass(20);
        Assert.Empty(night.Sent);
        Assert.Equal(1, night.Store.Count("SELECT count(*) FROM call_story WHERE reason = 'PartOfATrouble'"));
        await night.Alarms.Clear(alarm.Id);
        await night.Overheat(id: "furnace-1.overheat.crown-2");
        await night.Pass(1);
        Assert.Equal(["ana call #1"], night.Sent);
    }

    [Fact]
    public async Task Messages_are_kept_for_a_year_and_then_forgotten_but_never_while_they_wait()
    {
        var id = await night.Overheat();
        await night.Pass(1);
        await night.Alarms.Clear(id);
        await night.Send();
        night.Outlet.Answer = _ => new SendResult.TryAgain("away", HasAnswered: false);
        await night.Overheat(id: "still-waiting");
        await night.Alarms.Clear("still-waiting");
        night.Time.Advance(TimeSpan.FromDays(399));
        await night.Store.Write(night.Desk.Tick);
        Assert.Equal(4, night.Store.Count("SELECT count(*) FROM outbox"));
        night.Time.Advance(TimeSpan.FromDays(2));
        await night.Store.Write(night.Desk.Tick);
        Assert.Equal(2, night.Store.Count("SELECT count(*) FROM outbox WHERE occurrence = 'still-waiting'"));
        Assert.Equal(2, night.Store.Count("SELECT (SELECT count(*) FROM outbox) + (SELECT count(*) FROM call_story) - 1"));
    }

    [Fact]
    public async Task Running_the_same_transition_twice_changes_nothing()
    {
        await night.Overheat();
        await night.Overheat();
        await night.Pass(1);
        Assert.Equal(["ana call #1"], night.Sent);
    }

    [Fact]
    public async Task Killed_between_commit_and_send_the_message_still_comes()
    {
        await night.Overheat();
        night.Restart();
        await night.Send();
        Assert.Equal(["ana call #1"], night.Sent);
    }

    [Fact]
    public async Task Killed_before_commit_no_message_and_no_story_is_left()
    {
        await Assert.ThrowsAsync<InvalidOperationException>(() => night.Store.Write(scope =>
        {
            night.Alarms.Raise(FakeAlarms.Overheat(night.Now), scope);
            throw new InvalidOperationException("killed here");
        }));
        Assert.Equal(0, night.Store.Count("SELECT (SELECT count(*) FROM outbox) + (SELECT count(*) FROM call_story)"));
    }

    [Fact]
    public async Task A_restart_neither_forgets_nor_repeats_a_call()
    {
        await night.Overheat();
        await night.Pass(3);
        night.Restart();
        await night.Pass(1.9);
        Assert.Equal(["ana call #1"], night.Sent);
        await night.Pass(0.2);
        Assert.Equal(["ana call #1", "ana call #2"], night.Sent);
    }

    [Fact]
    public async Task After_hours_off_the_next_person_gets_one_call_and_not_a_pile()
    {
        await night.Overheat();
        await night.Send();
        night.Time.Advance(TimeSpan.FromHours(3));
        night.Restart();
        await night.Pass(1);
        Assert.Equal(["ana call #1", "ana call #2", "ben call #2"], night.Sent);
    }

    [Fact]
    public async Task A_clock_set_back_an_hour_does_not_put_off_the_next_call_by_an_hour()
    {
        await night.Overheat();
        await night.Pass(1);
        night.Time.AdjustTime(night.Time.GetUtcNow() - TimeSpan.FromHours(1));
        await night.Pass(5.1);
        Assert.Equal(["ana call #1", "ana call #2"], night.Sent);
    }

    [Fact]
    public async Task After_an_outage_a_phone_rings_once_and_not_for_every_round_missed()
    {
        night.Outlet.Answer = _ => new SendResult.TryAgain("away", HasAnswered: false);
        await night.Overheat();
        for (var round = 0; round < 6; round++) await night.Pass(5);
        night.Outlet.Answer = _ => new SendResult.Accepted("back");
        await night.Send();
        Assert.Equal(["ana call #7", "ben call #7"], night.Sent);
    }

    [Fact]
    public async Task A_call_that_could_not_be_sent_is_not_sent_after_somebody_has_it()
    {
        night.Outlet.Answer = _ => new SendResult.TryAgain("away", HasAnswered: false);
        var id = await night.Overheat();
        await night.Send();
        await night.Alarms.Take(id, "Ana");
        night.Outlet.Answer = _ => new SendResult.Accepted("back");
        await night.Send();
        Assert.Empty(night.Sent);
    }

    [Fact]
    public async Task The_end_never_overtakes_the_beginning()
    {
        var isAway = true;
        night.Outlet.Answer = m => isAway && m.Kind == MessageKind.Call ? new SendResult.TryAgain("busy", HasAnswered: true) : new SendResult.Accepted("taken");
        var id = await night.Overheat();
        await night.Alarms.Clear(id);
        await night.Send();
        Assert.Empty(night.Sent);
        isAway = false;
        await night.Send();
        Assert.Equal(["ana call #1", "ana closing #2"], night.Sent);
    }
}
