using HotShop.Monitor.Loop;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace HotShop.Monitor.Tests;

public sealed class ScaledClockTests
{
    static readonly DateTimeOffset Start = new(2026, 3, 3, 8, 0, 0, TimeSpan.Zero);
    readonly FakeTimeProvider wall = new();

    [Fact]
    public void It_stands_until_it_begins_and_then_runs_at_its_speed()
    {
        var clock = new ScaledClock(wall, 60, Start);
        wall.Advance(TimeSpan.FromSeconds(5));
        Assert.Equal(Start, clock.GetUtcNow());
        clock.Begin();
        wall.Advance(TimeSpan.FromSeconds(5));
        Assert.Equal(Start.AddMinutes(5), clock.GetUtcNow());
    }

    [Fact]
    public void It_waits_where_it_is_told_and_does_not_jump_to_make_up_for_it()
    {
        var clock = new ScaledClock(wall, 60, Start);
        clock.WaitAt(Start.AddMinutes(2));
        clock.Begin();
        wall.Advance(TimeSpan.FromSeconds(30));
        Assert.Equal(Start.AddMinutes(2), clock.GetUtcNow());
        clock.WaitAt(Start.AddMinutes(10));
        Assert.Equal(Start.AddMinutes(2), clock.GetUtcNow());
        wall.Advance(TimeSpan.FromSeconds(3));
        Assert.Equal(Start.AddMinutes(5), clock.GetUtcNow());
    }

    [Fact]
    public void It_never_goes_back()
    {
        var clock = new ScaledClock(wall, 60, Start);
        clock.Begin();
        wall.Advance(TimeSpan.FromSeconds(4));
        clock.WaitAt(Start.AddMinutes(1));
        Assert.Equal(Start.AddMinutes(4), clock.GetUtcNow());
        Assert.Equal(TimeSpan.FromMinutes(4), clock.GetElapsedTime(0, clock.GetTimestamp()));
    }
}
