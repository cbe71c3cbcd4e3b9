using HotShop.Monitor.Live;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Readings;

/// <summary>What becomes of a message, up to the row that is kept.</summary>
public sealed class IntakeTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();

    Instant Now => studio.Now;

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    [Fact]
    public async Task A_plain_number_is_kept_with_the_time_of_its_arrival()
    {
        await studio.Send("furnace-1/crown", "1148.6");
        Assert.Equal([(Now, 1148.6)], studio.Raw("furnace-1/crown"));
    }

    [Fact]
    public async Task A_timed_value_in_fahrenheit_is_kept_in_celsius_with_its_own_time()
    {
        await studio.Send("furnace-1/crown", """{"value":2102,"unit":"[degF]","time":"2026-03-02T07:59:58.120Z"}""");
        Assert.Equal([(Now - Seconds(1.88), 1150.0)], studio.Raw("furnace-1/crown"));
    }

    [Fact]
    public async Task A_state_may_be_written_as_a_word()
    {
        foreach (var (payload, second) in new[] { ("on", 1), ("false", 2), ("1", 3), ("\"off\"", 4) })
        {
            studio.Now = OpenStudio.Start + Seconds(second);
            await studio.Send("furnace-1/flame", payload);
        }
        Assert.Equal([1, 0, 1, 0], studio.Raw("furnace-1/flame").Select(r => r.Value));
    }

    [Fact]
    public async Task Practice_14_one_bad_row_of_a_backlog_does_not_cost_the_good_ones()
    {
        await studio.Send("furnace-1/crown", $"[{OpenStudio.Timed(1150, Now - Minutes(3))},{{\"value\":\"hot\",\"time\":\"2026-03-02T07:58:00Z\"}},{OpenStudio.Timed(1151, Now - Minutes(1))}]");
        Assert.Equal([1150, 1151], studio.Raw("furnace-1/crown").Select(r => r.Value));
        Assert.Contains("row 1", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_5_the_same_reading_again_is_ignored_and_counted()
    {
        for (var i = 0; i < 3; i++) await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, Now));
        Assert.Single(studio.Raw("furnace-1/crown"));
        Assert.Equal(2, studio.Count(Counters.Duplicate));
        Assert.Equal(0, studio.Count(Counters.Conflict));
    }

    [Fact]
    public async Task Practice_5_another_value_for_the_same_time_does_not_overwrite_the_first()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, Now));
        await studio.Send("furnace-1/crown", OpenStudio.Timed(900, Now));
        Assert.Equal([(Now, 1150.0)], studio.Raw("furnace-1/crown"));
        Assert.Equal(1, studio.Count(Counters.Conflict));
        Assert.Equal(900, studio.Scalar("SELECT offered FROM conflict"));
    }

    [Fact]
    public async Task A_reading_sent_again_after_it_was_moved_is_still_the_same_reading()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, OpenStudio.Start));
        studio.Now += Hours(2);
        await studio.Move();
        Assert.Equal(1, studio.Scalar("SELECT count(*) FROM reading"));
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, OpenStudio.Start));
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1, OpenStudio.Start));
        Assert.Equal((1, 1), (studio.Count(Counters.Duplicate), studio.Count(Counters.Conflict)));
        Assert.Equal(1, studio.Scalar("SELECT (SELECT count(*) FROM reading) + (SELECT count(*) FROM arrival)"));
    }

    [Fact]
    public async Task Two_values_without_a_time_in_one_microsecond_are_both_kept()
    {
        await studio.Send("furnace-1/crown", "1150");
        await studio.Send("furnace-1/crown", "1151");
        Assert.Equal([1150, 1151], studio.Raw("furnace-1/crown").Select(r => r.Value));
        Assert.Equal(0, studio.Count(Counters.Conflict));
    }

    [Fact]
    public async Task The_same_key_twice_in_one_message_is_a_conflict_like_in_two()
    {
        await studio.Send("furnace-1/crown", $"[{OpenStudio.Timed(1150, Now)},{OpenStudio.Timed(1151, Now)},{OpenStudio.Timed(1150, Now)}]");
        Assert.Equal([(Now, 1150.0)], studio.Raw("furnace-1/crown"));
        Assert.Equal((1, 1), (studio.Count(Counters.Duplicate), studio.Count(Counters.Conflict)));
    }

    [Fact]
    public async Task Practice_14_a_backlog_is_kept_counted_as_late_and_never_passes_for_the_present()
    {
        var pages = studio.The<LiveFeed>().Subscribe(TestContext.Current.CancellationToken);
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, Now));
        await studio.Send("furnace-1/crown", $"[{OpenStudio.Timed(700, Now - Hours(4))},{OpenStudio.Timed(701, Now - Hours(3))}]");
        Assert.Equal(2, studio.Count(Counters.Late));
        Assert.Equal([700, 701, 1150], studio.Raw("furnace-1/crown").Select(r => r.Value));
        Assert.Equal(1150, studio.The<LatestReadings>().Of(studio.Channel("furnace-1/crown"))!.Value);
        Assert.True(pages.TryRead(out var shown) && shown.Content is StoredReading { Value: 1150 });
        Assert.False(pages.TryRead(out _));
    }

    [Fact]
    public async Task Practice_17_a_retained_value_without_a_time_is_no_reading()
    {
        await studio.Send("furnace-1/crown", "1150", retained: true);
        Assert.Empty(studio.Raw("furnace-1/crown"));
        Assert.Equal(1, studio.Count(Counters.RetainedWithoutTime));
    }

    [Fact]
    public async Task Practice_17_a_retained_value_with_an_impossible_time_does_not_become_fresh()
    {
        await studio.Send("furnace-1/crown", """{"value":1150,"time":"1970-01-01T00:00:09Z"}""", retained: true);
        Assert.Empty(studio.Raw("furnace-1/crown"));
        Assert.Equal(1, studio.Count(Counters.RetainedWithoutTime));
    }

    [Fact]
    public async Task Practice_17_a_retained_value_is_shown_as_stale_until_a_live_one_comes()
    {
        var crown = studio.Channel("furnace-1/crown");
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, Now - Seconds(2)), retained: true);
        Assert.Equal(Quality.Stale, studio.The<LatestReadings>().QualityOf(crown, Now));
        await studio.Restart();
        Assert.Equal(Quality.Stale, studio.The<LatestReadings>().QualityOf(crown, Now));
        await studio.Send("furnace-1/crown", "1151");
        Assert.Equal(Quality.Good, studio.The<LatestReadings>().QualityOf(crown, Now));
    }

    [Theory, InlineData("2026-03-02T08:02:01Z"), InlineData("2019-12-31T23:59:59Z")]
    public async Task A_time_in_the_future_or_before_2020_gives_way_to_the_arrival_and_is_counted(string time)
    {
        await studio.Send("furnace-1/crown", $$"""{"value":1150,"time":"{{time}}"}""");
        Assert.Equal([(Now, 1150.0)], studio.Raw("furnace-1/crown"));
        Assert.Equal(1, studio.Count(Counters.ImpossibleTime));
    }

    [Fact]
    public async Task A_clock_two_minutes_fast_is_believed()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, Now + Minutes(2)));
        Assert.Equal([(Now + Minutes(2), 1150.0)], studio.Raw("furnace-1/crown"));
        Assert.Equal(0, studio.Count(Counters.ImpossibleTime));
    }

    [Fact]
    public async Task A_reading_older_than_readings_are_kept_is_counted_and_listed_not_merged()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, Now - Days(90) - Seconds(1)));
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1151, Now - Days(90)));
        Assert.Equal([1151], studio.Raw("furnace-1/crown").Select(r => r.Value));
        Assert.Equal(1, studio.Count(Counters.TooOld));
        Assert.Contains("90 days", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Practice_36_the_list_of_refused_messages_keeps_the_last_thousand_and_counts_all()
    {
        await Task.WhenAll(Enumerable.Range(0, 1_100).Select(i => studio.Send("furnace-1/crown", $"nonsense {i}")));
        Assert.Equal(1_000, studio.Refused.Count);
        Assert.Equal("nonsense 1099", studio.Refused[0].Sample);
        Assert.Equal(1_100, studio.Count(Counters.Refused));
        await studio.Send("furnace-1/crown", "1150");
        Assert.Single(studio.Raw("furnace-1/crown"));
    }

    [Fact]
    public async Task Practice_30_a_null_is_refused_and_never_a_zero()
    {
        await studio.Send("furnace-1/gas-flow", """{"value":null}""");
        Assert.Empty(studio.Raw("furnace-1/gas-flow"));
        Assert.Single(studio.Refused);
    }

    [Fact]
    public async Task Practice_7_whole_numbers_and_fractions_of_one_channel_live_together()
    {
        await studio.Send("furnace-1/crown", (Now, 1150), (Now + Seconds(10), 1150.5), (Now + Seconds(20), 1151));
        Assert.Equal([1150, 1150.5, 1151], studio.Raw("furnace-1/crown").Select(r => r.Value));
    }

    [Fact]
    public async Task An_implausible_value_is_kept_shown_as_such_and_left_out_of_every_sum()
    {
        await studio.Send("furnace-1/crown", (Now, 1150), (Now + Seconds(10), 9999));
        Assert.Equal(Quality.Implausible, studio.The<LatestReadings>().QualityOf(studio.Channel("furnace-1/crown"), Now));
        Assert.Equal([1150], studio.Raw("furnace-1/crown").Select(r => r.Value));
        Assert.Equal(2, studio.Scalar("SELECT count(*) FROM arrival"));
        studio.Now += Minutes(5);
        Assert.Equal(Quality.Stale, studio.The<LatestReadings>().QualityOf(studio.Channel("furnace-1/crown"), Now));
    }

    [Fact]
    public async Task Practice_28_a_channel_that_measures_something_else_begins_a_new_series_and_it_is_counted()
    {
        await studio.Send("annealer-2/power", (Now, 5));
        await studio.Restart(SomeStudio.With("annealer-2", "power", c => c with { Quantity = "energy" }));
        await studio.Send("annealer-2/power", (Now + Seconds(10), 7000));
        Assert.Equal([7000], studio.Raw("annealer-2/power").Select(r => r.Value));
        Assert.Equal(1, studio.Count(Counters.UnitChanged));
        await studio.Restart();
        Assert.Equal(7000, studio.The<LatestReadings>().Of(studio.Channel("annealer-2/power"))!.Value);
        await studio.Restart(SomeStudio.Configuration);
        Assert.Equal((Now - Seconds(10), 5.0), Assert.Single(studio.Raw("annealer-2/power")));
        Assert.Equal(5, studio.The<LatestReadings>().Of(studio.Channel("annealer-2/power"))!.Value);
    }

    [Fact]
    public async Task A_stage_that_trips_over_a_reading_does_not_cost_the_reading()
    {
        await using var odd = OpenStudio.Open(more: s => s.AddSingleton<IReadingStage, Tripping>());
        await Task.WhenAll(odd.Send("furnace-1/crown", "1150"), odd.Send("furnace-1/terminal", "30"));
        Assert.Single(odd.Raw("furnace-1/crown"));
        Assert.Single(odd.Raw("furnace-1/terminal"));
        Assert.Empty(odd.Refused);
        Assert.Contains("tripped over a fault", Assert.Single(odd.Errors), StringComparison.Ordinal);
    }

    sealed class Tripping : IReadingStage
    {
        public void React(IReadOnlyList<StoredReading> readings, WriteScope scope)
        {
            if (readings[0].Channel.Name == "crown") throw new InvalidOperationException("a defect");
        }
    }
}
