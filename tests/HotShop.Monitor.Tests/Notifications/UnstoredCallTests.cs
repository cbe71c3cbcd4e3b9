using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications;
using Microsoft.Extensions.Logging.Abstractions;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class UnstoredCallTests : IDisposable
{
    readonly TestNight night = new();
    readonly TickPulse pulse;
    readonly UnstoredCall call;

    public UnstoredCallTests()
    {
        pulse = new(night.Time);
        call = new(night.Plan, night.Order, new(night.Outlet, null, new Uri("https://quillmere.example/")), night.Board, pulse, night.Time, NullLogger<UnstoredCall>.Instance);
    }

    public void Dispose()
    {
        call.Dispose();
        night.Dispose();
    }

    [Fact]
    public async Task When_nothing_can_be_stored_for_a_minute_a_phone_rings_all_the_same_and_the_message_says_so()
    {
        Store(false);
        await Look(0.9);
        Assert.Empty(night.Sent);
        await Look(0.3);
        Assert.Equal(["ana call #1"], night.Sent);
        var text = night.Outlet.Taken[0].Message.Text;
        Assert.Contains("stores nothing since 02:14: disk full. No alarm can be raised", text, StringComparison.Ordinal);
        Assert.Contains("not stored either", text, StringComparison.Ordinal);
        Assert.True(text.Length <= MessageText.LongestCharacters, $"{text.Length} characters");
    }

    [Fact]
    public async Task It_goes_on_to_the_next_person_repeats_slowly_and_ends_once_when_the_store_is_back()
    {
        Store(false);
        await Look(17);
        Assert.Equal(["ana call #1", "ben call #2", "ana call #3", "ben call #3"], night.Sent);
        Store(true);
        await Look(30);
        Assert.Equal(["ana closing #4", "ben closing #4"], night.Sent.Skip(4).Order());
    }

    [Fact]
    public async Task A_loop_that_hangs_without_a_word_calls_too()
    {
        Store(true);
        await Look(3, isTurning: false);
        Assert.Equal(["ana call #1"], night.Sent);
        Assert.Contains("no turn of the loop", night.Outlet.Taken[0].Message.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_store_that_stumbles_for_half_a_minute_calls_nobody()
    {
        Store(false);
        await Look(0.5);
        Store(true);
        await Look(5);
        Assert.Empty(night.Sent);
    }

    async Task Look(double minutes, bool isTurning = true)
    {
        for (var seconds = 0; seconds < minutes * 60; seconds += 5)
        {
            night.Time.Advance(TimeSpan.FromSeconds(5));
            if (isTurning) pulse.Beat();
            await call.Look(TestContext.Current.CancellationToken);
        }
    }

    void Store(bool isWorking) => night.Board.Report(HealthBoard.Store, isWorking, isWorking ? "writing" : "disk full", night.Now);
}
