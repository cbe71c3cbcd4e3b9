using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Simulator;
using HotShop.Simulator.Faults;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>The alarms on a plant that knows nothing of them, with people who shut down in the evening, charge, open doors and forget.</summary>
public class SimulatedNights
{
    static readonly Func<ApplianceOptions, ApplianceOptions> WithoutFlameSensors = a => a.Without("flame").Without("call-for-heat").Without("lock-out");

    static SimulatedNight With(FaultKind kind, string appliance, double afterHours, int minutes, int seed = 5, StudioPlan? plan = null) =>
        new SimulatedNight(seed, plan, 10, new FaultOrder(kind, appliance, Duration.FromHours(afterHours), Duration.FromMinutes(minutes))).Run(Duration.FromHours(afterHours) + Duration.FromMinutes(minutes + 120));

    // A quarter of the month that the scorecard "quiet" runs in full.
    [Theory, InlineData(1), InlineData(2), InlineData(3)]
    public void A_week_without_faults_calls_nobody(int seed)
    {
        var night = new SimulatedNight(seed, sampleSeconds: 30).Run(Duration.FromDays(7));
        Assert.True(!night.Calls.Any(), night.Story);
        Assert.InRange(night.Samples, 250_000, 1_000_000);
    }

    [Theory, InlineData(1), InlineData(2)]
    public void A_week_without_faults_calls_nobody_where_there_are_no_flame_sensors(int seed)
    {
        var night = new SimulatedNight(seed, SimulatedNight.Plan(30, WithoutFlameSensors), 30).Run(Duration.FromDays(7));
        Assert.True(!night.Calls.Any(), night.Story);
    }

    [Theory]
    [InlineData(FaultKind.ColdCharge, Quillmere.Furnace, 3, 60)]
    [InlineData(FaultKind.BurnerCycling, Quillmere.Furnace, 2, 480)]
    [InlineData(FaultKind.BurnerCycling, Quillmere.GloryHole, 3, 240)]
    [InlineData(FaultKind.DoorLeftOpen, Quillmere.GloryHole, 4, 60)]
    [InlineData(FaultKind.DoorLeftOpen, Quillmere.Furnace, 4, 30)]
    [InlineData(FaultKind.DoorLeftOpen, Quillmere.FirstAnnealer, 5, 4)]
    public void Normal_life_calls_nobody(FaultKind kind, string appliance, int afterHours, int minutes)
    {
        var night = With(kind, appliance, afterHours, minutes);
        Assert.True(!night.Calls.Any(), night.Story);
        var blind = With(kind, appliance, afterHours, minutes, plan: SimulatedNight.Plan(10, WithoutFlameSensors));
        Assert.True(!blind.Calls.Any(), blind.Story);
    }

    [Theory]
    [InlineData(FaultKind.FlameOutWithGas, Quillmere.Furnace, 19, 30, 3, "furnace-1.flame-failure")]
    [InlineData(FaultKind.FlameOutWithGas, Quillmere.GloryHole, 4, 20, 3, "glory-hole-1.flame-failure")]
    [InlineData(FaultKind.GasSupplyLost, Quillmere.Shop, 4, 30, 2, "furnace-1.lock-out.lock-out", "glory-hole-1.lock-out.lock-out")]
    [InlineData(FaultKind.CoupleOpen, Quillmere.Furnace, 19, 15, 3, "furnace-1.silent.crown")]
    [InlineData(FaultKind.ElementFailed, Quillmere.FirstAnnealer, 5, 120, 60, "annealer-1.annealer-drift")]
    [InlineData(FaultKind.PowerCut, Quillmere.Shop, 19, 15, 2, "shop.mains-lost.mains")]
    [InlineData(FaultKind.SilentDevice, Quillmere.Furnace, 19, 15, 3, "furnace-1.silent.crown")]
    [InlineData(FaultKind.HeldBackDevice, Quillmere.FirstAnnealer, 5, 60, 3, "annealer-1.silent.chamber")]
    [InlineData(FaultKind.Overheat, Quillmere.Furnace, 19, 60, 45, "furnace-1.overheat.crown", "furnace-1.lock-out.lock-out")]
    [InlineData(FaultKind.Overheat, Quillmere.FirstAnnealer, 5, 60, 20, "annealer-1.overheat.chamber")]
    [InlineData(FaultKind.DoorLeftOpen, Quillmere.FirstAnnealer, 5, 60, 40, "annealer-1.annealer-drift")]
    public void A_fault_calls_for_what_it_is_in_time(FaultKind kind, string appliance, int afterHours, int minutes, int withinMinutes, params string[] expected)
    {
        var night = With(kind, appliance, afterHours, minutes);
        var begins = SimulatedNight.Start + Duration.FromHours(afterHours);
        foreach (var alarm in expected)
        {
            var raised = night.Calls.FirstOrDefault(t => t.Occurrence.AlarmId == alarm);
            Assert.True(raised is not null, $"{alarm} did not ring:\n{night.Story}");
            Assert.InRange(raised.At, begins, begins + Duration.FromMinutes(withinMinutes));
        }
        // What is mended is over; nothing stays behind in the list.
        Assert.All(night.Happened.GroupBy(t => t.Occurrence.Id), g => Assert.True(g.Any(t => t.Change == AlarmChange.Cleared), $"{g.Key} did not clear:\n{night.Story}"));
    }

    [Fact] public void A_flame_lost_with_the_gas_on_is_inferred_where_no_sensor_sees_it()
    {
        foreach (var (appliance, afterHours) in new[] { (Quillmere.Furnace, 19), (Quillmere.GloryHole, 4) })
        {
            var night = With(FaultKind.FlameOutWithGas, appliance, afterHours, 40, plan: SimulatedNight.Plan(10, WithoutFlameSensors));
            var raised = night.Calls.FirstOrDefault(t => t.Occurrence.AlarmId == $"{appliance}.falling-with-gas");
            Assert.True(raised is not null, night.Story);
            Assert.InRange(raised.At - SimulatedNight.Start - Duration.FromHours(afterHours), Duration.FromMinutes(5), Duration.FromMinutes(30));
            Assert.Contains("Inferred", raised.Occurrence.Words.Sentence, StringComparison.Ordinal);
        }
    }

    [Fact] public void What_happened_while_a_device_was_held_back_does_not_ring_when_it_tells_of_it()
    {
        var at = Duration.FromHours(19);
        var night = new SimulatedNight(5, null, 10,
            new FaultOrder(FaultKind.HeldBackDevice, Quillmere.Furnace, at, Duration.FromMinutes(90)),
            new FaultOrder(FaultKind.FlameOutWithGas, Quillmere.Furnace, at + Duration.FromMinutes(10), Duration.FromMinutes(30))).Run(at + Duration.FromHours(4));
        Assert.Equal(["furnace-1.silent.crown"], night.Calls.Select(t => t.Occurrence.AlarmId));
    }
}
