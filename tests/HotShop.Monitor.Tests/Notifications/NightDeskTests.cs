using System.Web;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Notifications;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class NightDeskTests : IDisposable
{
    readonly TestNight night = new(TestNight.Person("ana"), TestNight.Person("ben"), TestNight.Person("cleo"));

    public void Dispose() => night.Dispose();

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Looking_at_a_link_a_hundred_times_never_acknowledges()
    {
        var (id, token) = await Called();
        for (var i = 0; i < 100; i++) Assert.Null(night.Night.Look(id, token)!.HeldBy);
        Assert.Equal(AlarmState.Unacknowledged, night.Alarms.Find(id)!.State);
        await night.Pass(5);
        Assert.Equal("ana call #2", night.Sent[^1]);
    }

    [Fact]
    public async Task The_link_of_a_message_shows_the_alarm_who_you_are_and_who_is_called_when()
    {
        var (id, token) = await Called();
        var view = night.Night.Look(id, token)!;
        Assert.Equal(("Ana", "Ben", night.Now + night.Order.Settings.NextAfter), (view.You!.Name, view.Next!.Name, view.NextAt));
        Assert.Equal(["Ana"], view.Told.Select(t => t.Name));
    }

    [Fact]
    public async Task I_have_it_acknowledges_under_the_name_of_the_phones_owner_and_stops_the_calls()
    {
        var (id, token) = await Called();
        var result = await night.Night.Take(id, token, Stop);
        Assert.Equal((NightOutcome.Taken, "Ana"), (result.Outcome, result.View!.HeldBy));
        await night.Pass(30);
        Assert.Equal(["ana call #1"], night.Sent);
    }

    [Fact]
    public async Task A_second_tap_changes_nothing_and_another_person_hears_who_has_it()
    {
        var (id, token) = await Called();
        await night.Pass(10);
        var bens = Token(night.Outlet.Taken.Last(t => t.Person == "ben").Message.Link);
        await night.Night.Take(id, token, Stop);
        Assert.Equal(NightOutcome.Taken, (await night.Night.Take(id, token, Stop)).Outcome);
        var second = await night.Night.Take(id, bens, Stop);
        Assert.Equal((NightOutcome.AlreadyTaken, "Ana"), (second.Outcome, second.View!.HeldBy));
    }

    [Fact]
    public async Task Wake_the_next_person_calls_them_now_and_after_the_last_everybody_again()
    {
        var (id, token) = await Called();
        Assert.Equal((NightOutcome.Woken, "Ben"), await Wake());
        Assert.Equal((NightOutcome.Woken, "Cleo"), await Wake());
        Assert.Equal((NightOutcome.EverybodyCalledAgain, null), await Wake());
        await night.Send();
        Assert.Equal(["ana call #1", "ana call #4", "ben call #4", "cleo call #4"], night.Sent);

        async Task<(NightOutcome, string?)> Wake()
        {
            var result = await night.Night.WakeNext(id, token, Stop);
            return (result.Outcome, result.Woken);
        }
    }

    [Fact]
    public async Task The_person_woken_by_hand_has_the_full_time_before_one_more_is_called()
    {
        var (id, token) = await Called();
        await night.Pass(4);
        await night.Night.WakeNext(id, token, Stop);
        await night.Pass(9.9);
        Assert.DoesNotContain(night.Sent, s => s.StartsWith("cleo", StringComparison.Ordinal));
        await night.Pass(0.2);
        Assert.Contains(night.Sent, s => s.StartsWith("cleo call", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_link_for_one_alarm_says_nothing_about_another()
    {
        var (_, token) = await Called();
        var other = await night.Overheat(id: "furnace-1.overheat.crown-2");
        Assert.Null(night.Night.Look(other, token));
        Assert.Equal(NightOutcome.Unknown, (await night.Night.Take(other, token, Stop)).Outcome);
        Assert.Equal(NightOutcome.Unknown, (await night.Night.WakeNext(other, token, Stop)).Outcome);
        Assert.Equal(AlarmState.Unacknowledged, night.Alarms.Find(other)!.State);
    }

    [Fact]
    public async Task Eight_hours_after_the_end_a_link_opens_no_more()
    {
        var (id, token) = await Called();
        await night.Alarms.Clear(id);
        night.Time.Advance(TimeSpan.FromHours(8));
        Assert.NotNull(night.Night.Look(id, token));
        night.Time.Advance(TimeSpan.FromSeconds(1));
        Assert.Null(night.Night.Look(id, token));
    }

    [Fact]
    public async Task A_missing_or_wrong_token_and_an_unknown_alarm_give_the_same_answer()
    {
        var (id, token) = await Called();
        foreach (var (occurrence, wrong) in new[] { (id, null), (id, ""), (id, token + "A"), ("nothing-like-it", token) })
        {
            Assert.Null(night.Night.Look(occurrence, wrong));
            Assert.Equal(new NightResult(NightOutcome.Unknown, null), await night.Night.Take(occurrence, wrong, Stop));
        }
    }

    [Fact]
    public async Task No_token_lies_in_the_store()
    {
        var (_, token) = await Called();
        Assert.Equal(0, night.Store.Count($"SELECT count(*) FROM outbox WHERE instr(title || message || coalesce(proof, ''), '{token}') > 0"));
    }

    async Task<(string Id, string Token)> Called()
    {
        var id = await night.Overheat();
        await night.Send();
        return (id, Token(night.Outlet.Taken[^1].Message.Link));
    }

    static string Token(Uri link) => HttpUtility.ParseQueryString(link.Query)["t"]!;
}
