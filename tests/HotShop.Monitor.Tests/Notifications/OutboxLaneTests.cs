using FsCheck.Xunit;
using HotShop.Monitor.Notifications;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class OutboxLaneTests : IDisposable
{
    readonly TestNight night = new();

    public void Dispose() => night.Dispose();

    [Fact]
    public async Task What_is_refused_for_good_is_kept_with_its_reason_and_the_next_round_is_tried_all_the_same()
    {
        night.Outlet.Answer = m => m.Step == 1 ? new SendResult.Refused("404 no such topic") : new SendResult.Accepted("taken");
        await night.Overheat();
        await night.Lanes[0].Step(TestContext.Current.CancellationToken);
        await night.Lanes[0].Step(TestContext.Current.CancellationToken);
        Assert.Equal(1, night.Store.Count("SELECT count(*) FROM outbox WHERE state = 'failed' AND attempts = 1 AND last_error = '404 no such topic'"));
        Assert.True(night.Lanes[0].State.IsRefused);
        await night.Pass(5);
        Assert.Contains("ana call #3", night.Sent);
        Assert.False(night.Lanes[0].State.IsRefused);
    }

    [Fact]
    public async Task Where_every_way_to_the_first_person_is_refused_the_next_is_called_at_once()
    {
        night.Outlet.Answer = m => m.Key.Contains("/ana/", StringComparison.Ordinal) ? new SendResult.Refused("401") : new SendResult.Accepted("taken");
        await night.Overheat();
        await night.Send();
        Assert.Equal(["ben call #2"], night.Sent);
        await night.Pass(4.9);
        Assert.Equal(["ben call #2"], night.Sent);
    }

    [Fact]
    public async Task Where_everybody_refuses_the_calls_go_on_at_their_time_and_not_in_a_circle()
    {
        night.Outlet.Answer = _ => new SendResult.Refused("401");
        await night.Overheat();
        for (var i = 0; i < 10; i++) await night.Send();
        Assert.Equal(2, night.Store.Count("SELECT count(*) FROM outbox"));
        await night.Pass(5);
        Assert.Equal(4, night.Store.Count("SELECT count(*) FROM outbox"));
    }

    [Fact]
    public async Task A_way_that_was_refused_is_still_known_as_refused_after_a_restart()
    {
        night.Outlet.Answer = _ => new SendResult.Refused("401 check the token");
        await night.Overheat();
        await night.Send();
        night.Restart();
        await night.Lanes[0].Step(TestContext.Current.CancellationToken);
        Assert.Equal((true, "401 check the token"), (night.Lanes[0].State.IsRefused, night.Lanes[0].State.Problem));
    }

    [Fact]
    public async Task A_message_that_one_server_chokes_on_does_not_hold_back_another_alarm()
    {
        night.Outlet.Answer = m => m.Occurrence == "a" ? new SendResult.TryAgain("500", HasAnswered: true) : new SendResult.Accepted("taken");
        await night.Overheat(id: "a");
        await night.Overheat(id: "b");
        Assert.NotNull(await night.Lanes[0].Step(TestContext.Current.CancellationToken));
        Assert.Equal("b", night.Outlet.Taken.Single().Message.Occurrence);
    }

    [Fact]
    public async Task Where_nothing_answers_only_one_message_knocks()
    {
        var knocks = 0;
        night.Outlet.Answer = _ => { knocks++; return new SendResult.TryAgain("no answer", HasAnswered: false); };
        foreach (var id in new[] { "a", "b", "c" }) await night.Overheat(id: id);
        await night.Lanes[0].Step(TestContext.Current.CancellationToken);
        Assert.Equal(1, knocks);
    }

    [Fact]
    public async Task A_message_sent_while_the_store_cannot_note_it_is_not_sent_twice_by_the_same_process()
    {
        await night.Overheat();
        night.Store.IsBroken = true;
        for (var i = 0; i < 3; i++) await Assert.ThrowsAsync<IOException>(() => night.Lanes[0].Step(TestContext.Current.CancellationToken));
        night.Store.IsBroken = false;
        await night.Send();
        Assert.Equal(["ana call #1"], night.Sent);
        Assert.Equal(1, night.Store.Count("SELECT count(*) FROM outbox WHERE state = 'sent'"));
    }

    [Fact]
    public async Task A_second_copy_after_a_kill_can_be_told_by_its_key_and_number()
    {
        await night.Overheat();
        night.Store.IsBroken = true;   // killed after sending, before it was noted
        await Assert.ThrowsAsync<IOException>(() => night.Lanes[0].Step(TestContext.Current.CancellationToken));
        night.Restart();
        await night.Send();
        Assert.Equal(2, night.Outlet.Taken.Count);
        Assert.Single(night.Outlet.Taken.Select(t => (t.Message.Key, t.Message.Text, t.Message.Link)).Distinct());
    }

    [Property(MaxTest = 20)]
    public bool Whatever_the_receiver_does_every_call_arrives_in_order_and_exactly_once(int seed)
    {
        using var dark = new TestNight();
        var random = new Random(seed);
        dark.Outlet.Answer = _ => random.Next(3) switch
        {
            0 => new SendResult.Accepted("taken"),
            1 => new SendResult.TryAgain("busy", HasAnswered: true),
            _ => new SendResult.TryAgain("away", HasAnswered: false),
        };
        string[] ids = ["a", "b", "c"];
        foreach (var id in ids) dark.Overheat(id: id).GetAwaiter().GetResult();
        foreach (var id in ids) dark.Alarms.Clear(id).GetAwaiter().GetResult();
        for (var tries = 0; tries < 200; tries++) dark.Send().GetAwaiter().GetResult();
        return ids.All(id => dark.Outlet.Taken.Where(t => t.Message.Occurrence == id).Select(t => t.Message.Kind).SequenceEqual([MessageKind.Call, MessageKind.Closing]));
    }

    [Fact]
    public void The_waits_double_to_a_minute_and_never_knock_together()
    {
        Assert.Equal([1, 2, 4, 8, 16, 32, 60, 60], Enumerable.Range(1, 8).Select(n => BackOff.After(n, 1).TotalSeconds));
        Assert.Equal(0.5, BackOff.After(1, 0).TotalSeconds);
        Assert.Equal(60, BackOff.After(int.MaxValue, 1).TotalSeconds);
    }
}
