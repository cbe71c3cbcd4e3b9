using HotShop.Monitor.Configuration;
using HotShop.Monitor.Pot;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Pot;

/// <summary>Days that were worked: what was logged of them, and what it means when nothing was.</summary>
public sealed class WorkedDayTests : IAsyncDisposable
{
    // 2 March 2026 is a Monday; the studio is in Berlin, an hour ahead of UTC.
    readonly OpenStudio studio = OpenStudio.Open();
    int ids;

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    static Instant At(int day, int hour, int minute = 0) => Instant.FromUtc(2026, 3, day, hour - 1, minute);

    async Task Log(Instant at, string fields, string appliance = "furnace-1")
    {
        if (at > studio.Now) studio.Now = at;
        await studio.Send($"{appliance}/log", $$"""{"id":"e{{++ids}}","time":"{{at}}",{{fields}}}""");
        Assert.Empty(studio.Refused);
    }

    async Task Work(int day, int gathers, int from = 10, int to = 18)
    {
        await Log(At(day, from), """ "entry":"mode","mode":"working" """, "glory-hole-1");
        if (gathers > 0) await Log(At(day, 12), $""" "entry":"gather","size":"large","count":{gathers} """);
        await Log(At(day, to), """ "entry":"mode","mode":"off" """, "glory-hole-1");
    }

    PotDay Day(int day) => studio.The<PotBook>().Days("furnace-1", studio.Now).Single(d => d.Date == new LocalDate(2026, 3, day));

    [Fact]
    public async Task A_worked_day_that_nobody_logged_takes_what_such_a_day_usually_takes_and_widens_the_interval()
    {
        await Log(At(2, 9, 30), """ "entry":"dip","glassDepth":40,"unit":"cm" """);
        foreach (var day in new[] { 2, 3, 4 }) await Work(day, gathers: 10);
        var before = studio.Pot();
        await Work(5, gathers: 0);
        var after = studio.Pot();

        Assert.Empty(before.Missing);
        var missing = Assert.Single(after.Missing);
        Assert.Equal(new LocalDate(2026, 3, 5), missing.Day.Date);
        // Ten large gathers of 0.8 kg on each of the days before.
        Assert.Equal(8, missing.ExpectedKilograms, 1e-9);
        Assert.Equal(8, before.State.MassKilograms - after.State.MassKilograms, 0.1);
        // Half of it is not known (1.96 · 0.5 · 8), nor how that day differed from the others (0.35 · 8): in quadrature, on top of what was not known before.
        Assert.Equal(HotShop.Physics.Statistics.Quantiles.Normal95 * Math.Sqrt(4 * 4 + 2.8 * 2.8), missing.HalfWidth95Kilograms, 1e-9);
        Assert.Equal(Math.Sqrt(Math.Pow(before.State.HalfWidthKilograms, 2) + Math.Pow(missing.HalfWidth95Kilograms, 2)), after.State.HalfWidthKilograms, 0.1);
    }

    [Fact]
    public async Task A_tally_of_the_day_narrows_it_again_even_one_that_says_that_nobody_gathered()
    {
        foreach (var day in new[] { 2, 3, 4 }) await Work(day, gathers: 10);
        await Work(5, gathers: 0);
        var wide = studio.Pot();
        await Log(At(5, 19), $$""" "entry":"tally","from":"{{At(5, 10)}}","to":"{{At(5, 18)}}","gathers":{"large":0} """);
        var told = studio.Pot();
        Assert.Empty(told.Missing);
        Assert.Equal(wide.State.MassKilograms + 8, told.State.MassKilograms, 0.1);
        Assert.True(told.State.HalfWidthKilograms < wide.State.HalfWidthKilograms);
        Assert.True(Day(5).IsTallied);
    }

    [Fact]
    public async Task While_the_day_is_under_way_nobody_has_forgotten_anything_yet()
    {
        await Log(At(2, 10), """ "entry":"mode","mode":"working" """, "glory-hole-1");
        studio.Now = At(2, 17);
        Assert.Empty(studio.Pot().Missing);
        studio.Now = At(3, 1);
        // Nobody switched the mode back: at midnight that day is over all the same.
        Assert.Equal(new LocalDate(2026, 3, 2), Assert.Single(studio.Pot().Missing).Day.Date);
    }

    [Fact]
    public async Task A_day_off_or_a_glory_hole_lit_for_an_hour_is_no_missing_day()
    {
        await Work(2, gathers: 10);
        await Work(4, gathers: 0, from: 10, to: 11);
        studio.Now = At(6, 9);
        Assert.Empty(studio.Pot().Missing);
        Assert.DoesNotContain(studio.The<PotBook>().Days("furnace-1", studio.Now), d => d.Date.Day is 3 or 5);
    }

    [Fact]
    public async Task A_dip_after_the_missing_day_settles_it()
    {
        await Work(2, gathers: 0);
        Assert.Single(studio.Pot().Missing);
        await Log(At(3, 9), """ "entry":"dip","glassDepth":30,"unit":"cm" """);
        Assert.Empty(studio.Pot().Missing);
        Assert.InRange(studio.Pot().State.HalfWidthKilograms, 0, 8);
    }

    [Fact]
    public async Task Dips_teach_what_the_days_of_a_studio_take_that_never_logs_a_gather()
    {
        await Log(At(2, 9), """ "entry":"dip","glassDepth":42,"unit":"cm" """);
        await Work(2, gathers: 0);
        var first = studio.Pot();
        var start = studio.Pot(At(2, 9)).State.MassKilograms;
        // Each day really takes 12 cm of glass, a good deal more than expected; the furnace is filled again each evening.
        var perCentimetre = start / 42;
        for (var day = 3; day <= 9; day++)
        {
            await Log(At(day, 8), """ "entry":"dip","glassDepth":30,"unit":"cm" """);
            await Log(At(day, 8, 30), string.Create(System.Globalization.CultureInfo.InvariantCulture, $""" "entry":"charge","material":"cullet","massKg":{12 * perCentimetre:F1} """));
            await Work(day, gathers: 0);
        }
        var learnt = studio.Pot();
        double Error(PotReport report) => Math.Abs(report.State.LevelMetres * 100 - 30);
        Assert.True(Error(first) > 1.5 * Error(learnt), $"at first {Error(first):F1} cm off, then {Error(learnt):F1} cm");
        Assert.InRange(learnt.State.MassKilograms - start * 30 / 42, -learnt.State.HalfWidthKilograms, learnt.State.HalfWidthKilograms);
    }

    [Fact]
    public async Task Days_carry_their_gathers_by_size_and_a_tally_stands_in_for_the_single_ones()
    {
        await Work(2, gathers: 6);
        await Work(3, gathers: 2);
        await Log(At(3, 18), $$""" "entry":"tally","from":"{{At(3, 10)}}","to":"{{At(3, 18)}}","gathers":{"small":12,"large":5} """);
        Assert.Equal(new Dictionary<string, int> { ["large"] = 6 }, Day(2).Gathers);
        Assert.Equal(new Dictionary<string, int> { ["small"] = 12, ["large"] = 5 }, Day(3).Gathers);
        Assert.Equal(12 * 0.15 + 5 * 0.8, Day(3).NominalKilograms, 1e-9);
    }

    [Fact]
    public async Task A_day_of_23_hours_is_a_day()
    {
        // Clocks go forward in Berlin on 29 March 2026.
        await Log(Instant.FromUtc(2026, 3, 28, 20, 0), """ "entry":"mode","mode":"working" """);
        await Log(Instant.FromUtc(2026, 3, 29, 21, 0), """ "entry":"mode","mode":"holding" """);
        Assert.Equal(Hours(22), Day(29).Worked);
        Assert.Equal(Hours(3), Day(28).Worked);
    }
}
