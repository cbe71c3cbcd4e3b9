using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Handover.MorningStudio;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Handover;

/// <summary>Invented nights at Quillmere, and what the morning says of them.</summary>
public sealed class HandoverTests : IAsyncDisposable
{
    readonly OpenStudio studio = MorningStudio.Open(MorningStudio.Small with
    {
        People = [new() { Id = "ana", Name = "Ana", Phone = "555 0101", Outlets = [] }, new() { Id = "ben", Name = "Ben", Outlets = [] }],
        Notifications = new() { Order = ["ana", "ben"] },
        Upkeep = [new() { Name = "blower filter", Appliance = "furnace-1", EveryDays = 90 }, new() { Name = "crown couple", Appliance = "furnace-1", EveryHours = 10 }],
    }, At(3, 18));

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    Task Fire(Instant from, Instant to, double celsius) => studio.Send("furnace-1/crown", Steady(celsius, Seconds(10), from, to));

    /// <summary>The hours of the night are closed, and it is a few minutes past eight.</summary>
    async Task Morning()
    {
        studio.Now = At(4, 8, 3);
        await studio.Tick();
        await studio.Move();
    }

    static readonly Instant Seven = At(4, 7);

    /// <summary>Too hot from 02:00 on, taken by Ana, good again at 02:20.</summary>
    async Task<string> HotNight()
    {
        await Fire(At(3, 18), At(4, 2), 1150);
        await Fire(At(4, 2) + Seconds(10), At(4, 2, 10), 1300);
        var occurrence = Assert.Single(studio.The<IAlarmDesk>().Current).Id;
        await studio.The<IAlarmDesk>().Acknowledge(occurrence, "Ana", Stop);
        await Fire(At(4, 2, 10) + Seconds(10), At(4, 2, 20), 1300);
        await Fire(At(4, 2, 20) + Seconds(10), At(4, 7), 1150);
        await Morning();
        return occurrence;
    }

    [Fact]
    public async Task A_quiet_night_is_said_shortly()
    {
        await Fire(At(3, 18), At(4, 7), 1150);
        await Morning();
        var morning = studio.Morning(Seven);
        Assert.Equal("A quiet night.", studio.Words().Headline(morning));
        Assert.Contains("troubles: Nothing rang, and nothing waited for the morning.", studio.Said(morning), StringComparison.Ordinal);
        Assert.Contains("fires: Furnace 1: even, 1150 °C (2102 °F) to 1150 °C (2102 °F).", studio.Said(morning), StringComparison.Ordinal);
        Assert.Contains("tonight: Ana has the phone tonight, 555 0101. Ben is called as well when nobody answers for 10 min.", studio.Said(morning), StringComparison.Ordinal);
        Assert.Empty(morning.Questions);
    }

    [Fact]
    public async Task A_trouble_is_told_with_who_had_it_and_how_long_it_took()
    {
        await HotNight();
        var morning = studio.Morning(Seven);
        var trouble = Assert.Single(morning.Urgent);
        Assert.Equal(("Ana", true), (trouble.Occurrence.AcknowledgedBy, trouble.HasEnded));
        Assert.Equal("One trouble, ended at 02:21.", studio.Words().Headline(morning));
        Assert.Contains("Furnace 1 crown is 1300 °C (2372 °F), limit 1290 °C (2354 °F)", studio.Said(morning), StringComparison.Ordinal);
        Assert.Contains("Ana had it after 10 min. Ended 02:21, after 21 min.", studio.Said(morning), StringComparison.Ordinal);
        Assert.Contains("highest 1300 °C (2372 °F) at 02:0", studio.Said(morning), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_ended_trouble_asks_for_its_cause_until_somebody_writes_it()
    {
        var occurrence = await HotNight();
        Assert.Equal(occurrence, Assert.Single(studio.Morning(Seven).Questions).Occurrence.Id);

        var takeover = studio.The<Takeover>();
        Assert.NotNull(await takeover.Explain("furnace-1", occurrence, " ", "Ana", studio.Now, Stop));
        Assert.NotNull(await takeover.Explain("furnace-1", occurrence, "Burner valve stuck", " ", studio.Now, Stop));
        Assert.Null(await takeover.Explain("furnace-1", occurrence, "Burner valve stuck", "Ana", studio.Now, Stop));
        Assert.Empty(studio.Morning(Seven).Questions);
        Assert.Contains("Cause, as Ana wrote: Burner valve stuck.", studio.Said(studio.Morning(Seven)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_repair_at_the_same_appliance_answers_the_question_too()
    {
        await HotNight();
        await studio.Log("furnace-1", "repair", At(4, 7), "Ben", ("text", "new valve"));
        Assert.Empty(studio.Morning(Seven).Questions);
    }

    [Fact]
    public async Task Who_takes_over_is_shown_to_the_next_and_twice_is_once()
    {
        var takeover = studio.The<Takeover>();
        studio.Now = At(4, 7);
        Assert.Contains("name", await takeover.Take(new LocalDate(2026, 3, 4), "", studio.Now, Stop), StringComparison.Ordinal);
        Assert.Null(await takeover.Take(new LocalDate(2026, 3, 4), "Ben", studio.Now, Stop));
        studio.Now = At(4, 7, 5);
        Assert.Null(await takeover.Take(new LocalDate(2026, 3, 4), "ben", studio.Now, Stop));
        Assert.Single(studio.Logbook.Entries(null, At(4, 0), At(5, 0)));
        Assert.Equal("Ben took over at 07:00.", studio.Words().TakenOverSentence(studio.Morning(At(4, 7, 5))));
        Assert.Equal("Nobody has taken over yet. Ben did the day before.", studio.Words().TakenOverSentence(studio.Morning(At(5, 7))));
    }

    [Fact]
    public async Task A_gap_is_named_and_never_bridged()
    {
        await Fire(At(3, 18), At(4, 2, 10), 1150);
        await Fire(At(4, 2, 50), At(4, 7), 1150);
        await Morning();
        Assert.Contains("No reading 02:11 to 02:50.", studio.Said(studio.Morning(Seven)), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Readings_that_came_late_within_the_running_hour_are_no_gap()
    {
        await Fire(At(3, 18), At(4, 7), 1150);
        studio.Now = At(4, 8, 3);
        await studio.Move();
        for (var at = At(4, 8, 4); at < At(4, 8, 30); at += Seconds(10)) await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, at), arrived: At(4, 8, 40));
        studio.Now = At(4, 8, 40);
        var gap = Assert.Single(studio.Morning().Appliances.Single(a => a.Appliance == "furnace-1").Gaps, g => g.To > At(4, 7, 30) && g.From < At(4, 8, 30));
        Assert.Equal((At(4, 7, 1), At(4, 8, 4)), (gap.From, gap.To));
    }

    [Fact]
    public async Task A_backlog_that_would_have_rung_is_in_the_headline()
    {
        await Fire(At(3, 18), At(4, 2), 1150);
        await Fire(At(4, 3), At(4, 6), 1150);
        for (var at = At(4, 2) + Seconds(10); at < At(4, 3); at += Seconds(10)) await studio.Send("furnace-1/crown", OpenStudio.Timed(1302, at), arrived: At(4, 6));
        await Fire(At(4, 6) + Seconds(10), At(4, 7), 1150);
        await Morning();
        var morning = studio.Morning(Seven);
        Assert.Contains("One more was found later.", studio.Words().Headline(morning), StringComparison.Ordinal);
        Assert.Contains("late: 02:00 to 02:59 Furnace 1: crown was up to 1302 °C (2376 °F), limit 1290 °C (2354 °F). Found later: the readings came at 06:00, so it rang nobody.", studio.Said(morning), StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_nothing_has_been_heard_for_long_that_comes_first()
    {
        await Fire(At(3, 18), At(4, 3), 1150);
        await Morning();
        var morning = studio.Morning(Seven);
        Assert.True(morning.IsStale);
        Assert.StartsWith("Nothing has been heard since 03:00.", studio.Words().Headline(morning), StringComparison.Ordinal);
        Assert.DoesNotContain("quiet", studio.Words().Headline(morning), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_first_reading_it_says_that_nothing_was_measured() =>
        Assert.Equal("Nothing was measured in this night.", studio.Words().Headline(studio.Morning(At(4, 7))));

    [Fact]
    public async Task A_couple_counts_its_hot_hours_from_the_log_entry_that_names_it()
    {
        await Fire(At(3, 18), At(4, 2), 1150);
        studio.Now = At(4, 2, 5);
        await studio.Move();
        var couple = Assert.Single(studio.Morning(At(4, 2, 5)).Worn.Couples, c => c.Channel == "crown");
        Assert.Equal(8, couple.HoursHot, 0.01);
        Assert.False(couple.IsReset);

        await studio.Log("furnace-1", "repair", At(4, 2, 5), "Ben", ("channel", "crown"));
        await Fire(At(4, 2, 6), At(4, 7), 1150);
        studio.Now = At(4, 7, 3);
        await studio.Move();
        couple = Assert.Single(studio.Morning(Seven).Worn.Couples, c => c.Channel == "crown");
        Assert.Equal((true, At(4, 2, 5)), (couple.IsReset, couple.Since));
        Assert.Equal(55 / 60.0 + 4, couple.HoursHot, 0.05);
    }

    [Fact]
    public async Task What_is_due_is_told_until_the_log_says_it_is_done()
    {
        await Fire(At(3, 18), At(4, 7), 1150);   // 13 hours, due after 10
        studio.Now = At(4, 7, 3);
        await studio.Move();
        var due = Assert.Single(studio.Morning(Seven).Worn.Items, i => i.IsDue);
        Assert.Equal(("crown couple", true), (due.Name, due.IsInHours));
        Assert.Equal(-3, due.Left, 0.05);
        Assert.Contains("due: crown couple", studio.Words().Lede(studio.Morning(Seven)), StringComparison.Ordinal);

        await studio.Log("furnace-1", "note", At(4, 7, 3), "Ben", ("text", "Changed the crown couple"));
        await studio.Log("furnace-1", "repair", At(4, 7, 3), "Ben", ("upkeep", "blower filter"));
        Assert.DoesNotContain(studio.Morning(At(4, 7, 4)).Worn.Items, i => i.IsDue);
        Assert.Equal(90, studio.Morning(At(4, 7, 4)).Worn.Items.Single(i => i.Name == "blower filter").Left, 0.01);
    }

    [Fact]
    public async Task A_changed_pot_and_a_calibration_have_their_age()
    {
        await studio.Log("furnace-1", "pot-changed", At(1, 12), "Ana");
        await studio.Log("furnace-1", "calibration", At(2, 12), "Ana");
        var said = studio.Said(studio.Morning(At(4, 12)));
        Assert.Contains("worn: Pot of Furnace 1: 3 days old.", said, StringComparison.Ordinal);
        Assert.Contains("worn: Last calibration: 2 Mar 2026, 2 days ago.", said, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_correction_begins_the_hours_of_a_couple_anew_and_a_later_comparison_asks_for_new_ones()
    {
        var corrected = MorningStudio.Small with
        {
            Appliances = [.. MorningStudio.Small.Appliances.Select(a => a with
            {
                Channels = [.. a.Channels.Select(c => c.Id == "crown" ? c with { Calibrations = [new() { From = "2026-03-03", Points = [new() { Reading = "1150 °C", Correction = "-3 K" }] }] } : c)],
            })],
        };
        await using var own = MorningStudio.Open(corrected, At(2, 12));
        await own.Send("furnace-1/crown", Every(Seconds(10), At(2, 22), At(3, 4)).Concat(Every(Seconds(10), At(4, 5), At(4, 7))).Select(at => (at, 1150.0)));
        own.Now = At(4, 8);
        await own.Move();
        var worn = own.Morning(At(4, 8)).Worn;
        Assert.Equal((At(3, 0), true), (worn.Couples.Single(c => c.Channel == "crown").Since, worn.Couples.Single(c => c.Channel == "crown").IsReset));
        Assert.Equal(6, worn.Couples.Single(c => c.Channel == "crown").HoursHot, 0.1);
        Assert.Equal(At(3, 0), worn.LastCalibrationAt);
        // The comparison on the day of the correction is the one it was made of; a later one is not.
        await own.Log("furnace-1", "calibration", At(3, 10), "Ana", ("channel", "crown"));
        Assert.DoesNotContain("are older", own.Said(own.Morning(At(4, 8))), StringComparison.Ordinal);
        await own.Log("furnace-1", "calibration", At(4, 6), "Ana", ("channel", "crown"));
        Assert.Contains("its corrections in hotshop.json are older", own.Said(own.Morning(At(4, 8))), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_gas_of_a_night_is_compared_with_nights_of_its_kind()
    {
        await using var sparse = MorningStudio.Open(MorningStudio.Sparse, At(9, 12, month: 2));
        for (var day = 9; day <= 27; day++)
        {
            // A worked day burns 3 m³/h at night, a day off 2; the last night 4.
            var isWorked = new LocalDate(2026, 2, day).DayOfWeek is not (IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday);
            if (isWorked) await sparse.Worked(day, 2);
            var flow = day == 26 ? 4 : new LocalDate(2026, 2, day + 1).DayOfWeek is IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday ? 2 : 3;
            await sparse.Send("furnace-1/gas-flow", Steady(flow, Minutes(10), At(day, 12, month: 2), At(day + 1, 11, 50, 2)));
        }
        await sparse.Move();
        var more = sparse.Morning(At(27, 7, 1, 2)).Gas!;
        Assert.Equal((GasVerdict.More, At(26, 19, month: 2), At(27, 7, month: 2)), (more.Verdict, more.From, more.To));
        Assert.Equal(4.0 / 3, more.KilowattHours.Value / more.MedianKilowattHours!.Value.Value, 0.01);
        Assert.Equal(GasVerdict.AsUsual, sparse.Morning(At(26, 7, 1, 2)).Gas!.Verdict);
        // The night to this Monday has seen three others before a day off: two Sundays and a Monday.
        var rest = sparse.Morning(At(23, 7, 1, 2)).Gas!;
        Assert.Equal((GasVerdict.TooFewNights, 3), (rest.Verdict, rest.Nights));
    }
}
