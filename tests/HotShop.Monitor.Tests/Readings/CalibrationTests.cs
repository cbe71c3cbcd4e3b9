using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History;
using HotShop.Monitor.History.Figures;
using HotShop.Monitor.History.Replay;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Web;
using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Readings;

/// <summary>Corrections of calibrations: added by the reading's own time, shown, and never in place of what was read.</summary>
public sealed class CalibrationTests
{
    static readonly CalibrationOptions
        February = new() { From = "2026-02-01", By = "Ana", Points = [new() { Reading = "1000 °C", Correction = "-1 K" }, new() { Reading = "1200 °C", Reference = "1195 °C" }], Uncertainty = "1.2 K" },
        March = new() { From = "2026-03-02", Points = [new() { Reading = "2012 °F", Correction = "9 °F" }] };

    static StudioConfiguration Crown(params CalibrationOptions[] calibrations) => SomeStudio.With("furnace-1", "crown", c => c with { Calibrations = calibrations });

    static StudioConfiguration Couple(params CalibrationOptions[] calibrations) => SomeStudio.With("furnace-1", "couple", c => c with { Calibrations = calibrations });

    static OpenStudio Open(StudioConfiguration configuration) => OpenStudio.Open(configuration, more: c => c.AddAnnealing().AddAlarms().AddHistory().AddSingleton<DayStatement>());

    static IReadOnlyList<double> Values(OpenStudio studio, string channel, string unit)
    {
        using var connection = ((IStoreReader)studio.Store).Open();
        return studio.The<SeriesBook>().Find(channel, unit) is { } one ? [.. SampleRows.Every(connection, one.Id, 0, long.MaxValue).Select(s => s.Value)] : [];
    }

    static ChannelAnswer Answer(OpenStudio studio, string channel) => studio.The<ApplianceAnswers>().Of(studio.Channel(channel), studio.Now);

    static Task<ReplayReport> Replay(OpenStudio studio, bool apply = false) => studio.The<StudioReplay>().Run(studio.Now - Days(4), studio.Now, apply, CancellationToken.None);

    static ReplayPart Temperatures(ReplayReport report) => report.Parts.Single(p => p.Name == "temperatures from voltages and calibrations");

    [Fact]
    public async Task A_reading_is_corrected_and_kept_as_it_came()
    {
        await using var studio = Open(Crown(February));
        await studio.Send("furnace-1/crown", (studio.Now, 1100.0));
        Assert.Equal(1097, Assert.Single(studio.Raw("furnace-1/crown")).Value);
        Assert.Equal([1100.0], Values(studio, "furnace-1/crown", Quantities.AsRead));
        Assert.Equal(0, studio.Count(Counters.UnitChanged));
        await studio.Restart();
        var answer = Answer(studio, "furnace-1/crown");
        Assert.Equal(1097, answer.Value);
        Assert.Equal(new CalibrationAnswer(Instant.FromUtc(2026, 1, 31, 23, 0), "Ana", -3, 1100, IsHeld: false), answer.Calibration);
        // U = 1.2 °C with k = 2 is a standard uncertainty of 0.6 °C: 1.96 of it either way.
        Assert.Equal(1097 - 1.176, answer.ValueLow95!.Value, 0.001);
        Assert.Equal(1097 + 1.176, answer.ValueHigh95!.Value, 0.001);
        Assert.Empty(studio.Errors);
    }

    [Fact]
    public async Task Each_reading_takes_the_calibration_of_its_own_day_also_when_it_comes_late()
    {
        await using var studio = Open(Crown(March, February));
        // 2 March began at 23:00 UTC the day before.
        var midnight = Instant.FromUtc(2026, 3, 1, 23, 0);
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1000, midnight - Seconds(1)));
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1000, midnight));
        Assert.Equal([999.0, 1005], studio.Raw("furnace-1/crown").Select(r => r.Value));
        // A message that is delivered again is known, not a conflict.
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1000, midnight));
        Assert.Equal(0, studio.Count(Counters.Conflict));
        Assert.Equal(2, studio.Raw("furnace-1/crown").Count);
    }

    [Fact]
    public async Task Without_a_calibration_in_force_a_reading_is_kept_once()
    {
        await using var studio = Open(Crown(new CalibrationOptions { From = "2026-03-03", Points = March.Points }));
        await studio.Send("furnace-1/crown", (studio.Now, 1100.0));
        Assert.Equal(1, studio.Scalar("SELECT count(*) FROM arrival"));
        Assert.Null(Answer(studio, "furnace-1/crown").Calibration);
        Assert.Null(Answer(studio, "furnace-1/crown").ValueLow95);
    }

    [Fact]
    public async Task A_couple_in_millivolts_is_corrected_after_its_terminals_and_all_three_are_kept()
    {
        await using var studio = Open(Couple(March));
        await studio.Send("furnace-1/terminal", (studio.Now, 25));
        await studio.Send("furnace-1/couple", (studio.Now + Seconds(1), 11.808));
        var read = Thermocouple.OfType(ThermocoupleType.S).JunctionCelsius(11.808, 25)!.Value;
        Assert.Equal(read + 5, Assert.Single(studio.Raw("furnace-1/couple")).Value);
        Assert.Equal([read], Values(studio, "furnace-1/couple", Quantities.AsRead));
        Assert.Equal([11.808], Values(studio, "furnace-1/couple", Quantities.Millivolt));
    }

    [Fact]
    public async Task A_calibration_written_down_late_reaches_back_by_replay_and_can_be_taken_back_to_the_bit()
    {
        await using var studio = Open(Crown());
        var from = studio.Now;
        await studio.Send("furnace-1/crown", Every(Seconds(10), from, from + Hours(2)).Select((at, i) => (at, 1100 + i % 7 / 3.0)));
        studio.Now = from + Days(3);
        await studio.Move();
        var before = studio.Raw("furnace-1/crown");
        var hours = studio.Hours("furnace-1/crown");

        await studio.Restart(Crown(February, March));
        Assert.Equal(before.Count, Temperatures(await Replay(studio)).Differing);
        Assert.Equal(before, studio.Raw("furnace-1/crown"));
        await Replay(studio, apply: true);
        Assert.Equal(before.Select(r => (r.At, r.Value + 5)), studio.Raw("furnace-1/crown"));
        Assert.Equal(before.Select(r => r.Value), Values(studio, "furnace-1/crown", Quantities.AsRead));
        Assert.Equal(hours[0].Mean!.Value + 5, studio.Hours("furnace-1/crown")[0].Mean!.Value, 1e-9);
        Assert.Equal(0, Temperatures(await Replay(studio)).Differing);

        await studio.Restart(Crown());
        await Replay(studio, apply: true);
        Assert.Equal(before, studio.Raw("furnace-1/crown"));
        Assert.Equal(hours, studio.Hours("furnace-1/crown"));
        Assert.Empty(studio.Errors);
    }

    [Fact]
    public async Task An_alarm_goes_by_the_corrected_temperature_in_life_and_in_replay()
    {
        // 1300 °C as read is 5 °C above the truth, and the limit lies between.
        var limited = Crown(new CalibrationOptions { From = "2026-02-01", Points = [new() { Reading = "1300 °C", Correction = "-20 K" }] });
        await using var studio = Open(limited with { Appliances = [.. limited.Appliances.Select(a => a.Id == "furnace-1" ? a with { Alarms = new Dictionary<string, AlarmOptions> { ["overheat"] = new() { Limit = "1290 °C", OnDelaySeconds = 0 } } } : a)] });
        var from = studio.Now;
        foreach (var at in Every(Seconds(10), from, from + Minutes(10)))
        {
            studio.Now = at;
            await studio.Send("furnace-1/crown", (at, 1300.0));
            await studio.Tick();
        }
        Assert.DoesNotContain(studio.The<IAlarmDesk>().Current, o => o.Kind == AlarmKinds.Overheat);
        studio.Now = from + Days(3);
        await studio.Move();
        Assert.DoesNotContain((await Replay(studio)).Parts.SelectMany(p => p.Differences), d => d.ToString().Contains("overheat", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_reading_beyond_what_was_calibrated_says_so_and_claims_nothing_of_its_own()
    {
        await using var studio = Open(Crown(February));
        await studio.Send("furnace-1/crown", (studio.Now, 1250.0));
        var answer = Answer(studio, "furnace-1/crown");
        Assert.True(answer.Calibration!.IsHeld);
        Assert.Equal(1245, answer.Value);
        Assert.Null(answer.ValueLow95);
    }

    // JCGM 100:2008 (GUM), H.3: readings and corrections of a thermometer, where the line gives −0.1679 °C at 21.521 °C and −0.1570 °C at 26.511 °C.
    [Fact]
    public async Task Comparisons_that_scatter_correct_by_their_line_with_an_interval_of_their_own()
    {
        double[] readings = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511];
        double[] corrections = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160];
        var compared = new CalibrationOptions
        {
            From = "2026-02-01", ReferenceUncertainty = "0 K",
            Points = [.. readings.Zip(corrections, (r, c) => new CalibrationPointOptions { Reading = FormattableString.Invariant($"{r} °C"), Correction = FormattableString.Invariant($"{c} K") })],
        };
        await using var studio = Open(Crown(compared));
        Assert.Empty(ConfigurationCheck.Problems(Crown(compared), "hotshop.json"));
        await studio.Send("furnace-1/crown", (studio.Now, 21.521));
        Assert.Equal(-0.1679, Answer(studio, "furnace-1/crown").Calibration!.CorrectionKelvins, 0.0001);
        await studio.Send("furnace-1/crown", (studio.Now + Seconds(10), 26.511));
        Assert.Equal(-0.1570, Answer(studio, "furnace-1/crown").Calibration!.CorrectionKelvins, 0.0001);
        // The line's standard uncertainty at its ends is 0.0020 °C, Student's t for nine degrees of freedom 2.262.
        Assert.Equal(2 * 2.262 * 0.0020, Answer(studio, "furnace-1/crown").ValueHigh95!.Value - Answer(studio, "furnace-1/crown").ValueLow95!.Value, 0.0005);
    }

    [Fact]
    public async Task The_class_of_the_wire_gives_an_interval_without_any_calibration()
    {
        await using var studio = Open(SomeStudio.With("furnace-1", "crown", c => c with { Unit = "Cel", Thermocouple = "K", Accuracy = new() { Tolerance = "iec-2" } }));
        await studio.Send("furnace-1/crown", (studio.Now, 1150.0));
        var answer = Answer(studio, "furnace-1/crown");
        // Class 2 of type K allows 0.75 %: 8.625 °C, and 95 of 100 within them lie in 95 % of the width.
        Assert.Equal(1150 - 8.194, answer.ValueLow95!.Value, 0.01);
        Assert.Equal(1150 + 8.194, answer.ValueHigh95!.Value, 0.01);
        Assert.Equal(("K", "IEC 60584-1 class 2"), (answer.Thermocouple, answer.Tolerance));
    }
}
