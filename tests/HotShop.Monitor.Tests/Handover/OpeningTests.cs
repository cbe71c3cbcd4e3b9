using HotShop.Monitor.Annealing;
using HotShop.Monitor.Tests.Support;
using HotShop.Physics.Annealing;
using HotShop.Physics.Energy;
using HotShop.Physics.Statistics;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Handover.MorningStudio;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Handover;

/// <summary>When an annealer can be opened: Newton's law of cooling in closed form, t = τ·ln((T₀ − T_room)/(T − T_room)).</summary>
public sealed class OpeningTests : IAsyncDisposable
{
    const double Room = 22, TauHours = 1.4;
    static readonly Instant Off = At(4, 5, 0);

    readonly OpenStudio studio = MorningStudio.Open(now: At(4, 1));

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    static double Celsius(Instant at, double start = 80) => at <= Off ? start : Room + (start - Room) * Math.Exp(-(at - Off).TotalHours / TauHours);

    static Instant TrueMoment(double start = 80) => Off + Hours(TauHours * Math.Log((start - Room) / (50 - Room)));

    Opening Annealer => studio.The<OpeningBook>().Of(studio.Plan.Appliance("annealer-1")!, studio.Now);

    /// <summary>The chamber each half minute up to a moment, and the relay that is on until the heat is off.</summary>
    async Task Cools(Instant until, double start = 80)
    {
        await studio.Send("annealer-1/relay", [(Off - Hours(1), 1.0)]);
        await Chamber(Off - Hours(1), Off - Minutes(1), at => Celsius(at, start));
        await studio.Send("annealer-1/relay", [(Off, 0.0)]);
        await Chamber(Off, until, at => Celsius(at, start));
    }

    /// <summary>Minute by minute, as the service lives it.</summary>
    async Task Chamber(Instant from, Instant until, Func<Instant, double> celsius)
    {
        for (var minute = from; minute <= until; minute += Minutes(1))
        {
            await studio.Send("annealer-1/chamber", [(minute, celsius(minute)), (minute + Seconds(30), celsius(minute + Seconds(30)))]);
            studio.Now = minute + Seconds(55);
            await studio.Tick();
        }
        await studio.Move();
    }

    [Fact]
    public async Task From_the_measured_tail_the_moment_is_told_with_an_interval_that_holds_it()
    {
        await Cools(At(4, 5, 50));
        var opening = Annealer;
        Assert.Equal((CoolingPhase.Cooling, 0), (opening.Phase, opening.EarlierCoolings));
        Assert.InRange(TrueMoment(), opening.Expected!.Earliest95, opening.Expected.Latest95);
        Assert.True(opening.Expected.Latest95 - opening.Expected.Earliest95 < Hours(1.5), $"{opening.Expected}");
    }

    [Fact]
    public async Task Just_after_the_heat_is_off_nothing_is_made_up()
    {
        await Cools(At(4, 5, 12));
        Assert.Equal((CoolingPhase.Cooling, null), (Annealer.Phase, Annealer.Expected));
    }

    [Fact]
    public async Task Once_it_is_down_it_is_told_since_when()
    {
        await Cools(At(4, 6, 30));
        Assert.Equal(CoolingPhase.Down, Annealer.Phase);
        Assert.InRange((Annealer.DownSince!.Value - TrueMoment()).TotalMinutes, -1, 1.5);
    }

    [Fact]
    public async Task A_silent_couple_says_nothing()
    {
        await Cools(At(4, 5, 30));
        studio.Now = At(4, 6, 30);
        Assert.Equal(CoolingPhase.NotKnown, Annealer.Phase);
    }

    [Fact]
    public async Task An_annealer_that_is_heated_is_not_on_its_way_down()
    {
        await studio.Send("annealer-1/relay", [(Off - Hours(3), 1.0)]);
        await Chamber(Off - Hours(1), Off, _ => 495);
        Assert.Equal(CoolingPhase.Hot, Annealer.Phase);
    }

    [Fact]
    public async Task On_its_curve_the_rest_of_it_and_an_earlier_cooling_tell_the_moment()
    {
        await Cools(At(4, 6, 30));
        // The next load: its curve ends at 80 °C on the evening of the next day, and the chamber follows.
        var curve = new AnnealingCurve(At(5, 8), 495, [new Stage.Hold(Hours(2)), new Stage.Ramp(80, 50)]);
        await studio.The<LoadBook>().Add(new AnnealerLoad("bowls", "annealer-1", "bowls", curve, []), TestContext.Current.CancellationToken);
        await studio.Send("annealer-1/relay", [(At(5, 7), 1.0)]);
        await Chamber(At(5, 8), At(5, 12), at => curve.SetpointCelsius(at)!.Value);
        var opening = Annealer;
        Assert.Equal((CoolingPhase.OnCurve, curve.EndsAt, 1), (opening.Phase, opening.CurveEndsAt, opening.EarlierCoolings));
        var expected = curve.EndsAt + (TrueMoment() - Off);
        Assert.InRange((opening.Expected!.At - expected).TotalMinutes, -3, 3);
        Assert.InRange(expected, opening.Expected.Earliest95, opening.Expected.Latest95);
    }

    [Fact]
    public async Task On_a_curve_without_any_earlier_cooling_only_the_end_of_the_curve_is_told()
    {
        var curve = new AnnealingCurve(At(4, 4), 495, [new Stage.Ramp(80, 100)]);
        await studio.The<LoadBook>().Add(new AnnealerLoad("bowls", "annealer-1", "bowls", curve, []), TestContext.Current.CancellationToken);
        await Chamber(At(4, 4), At(4, 6), at => curve.SetpointCelsius(at)!.Value);
        Assert.Equal((CoolingPhase.OnCurve, curve.EndsAt, null), (Annealer.Phase, Annealer.CurveEndsAt, Annealer.Expected));
    }

    [Fact]
    public void A_room_that_may_be_as_warm_as_the_target_makes_no_promise()
    {
        var tail = Enumerable.Range(0, 60).Select(i => new Sample(Off + Minutes(i), Celsius(Off + Minutes(i)))).ToList();
        Assert.Null(OpeningForecast.FromTail(tail, 50, new Estimate(47, 4), Off + Hours(1)));
        Assert.Null(OpeningForecast.FromLessons(Off, 80, 50, new Estimate(50, 1), [1.4], Off));
    }

    [Fact]
    public void Coolings_that_differ_from_each_other_widen_the_interval()
    {
        ExpectedMoment Of(params double[] constants) => OpeningForecast.FromLessons(Off, 80, 50, new Estimate(Room, 2), constants, Off)!;
        Assert.True(Of(1.1, 1.4, 1.7).Latest95 > Of(1.39, 1.4, 1.41).Latest95 + Minutes(20));
        Assert.Equal(TrueMoment(), Of(1.39, 1.4, 1.41).At, TestTolerance);
    }

    static readonly InstantComparer TestTolerance = new();

    sealed class InstantComparer : IEqualityComparer<Instant>
    {
        public bool Equals(Instant x, Instant y) => Math.Abs((x - y).TotalSeconds) < 1;
        public int GetHashCode(Instant obj) => 0;
    }
}
