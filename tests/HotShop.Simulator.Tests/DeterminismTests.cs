using HotShop.Simulator.Faults;
using NodaTime;

namespace HotShop.Simulator.Tests;

public class DeterminismTests
{
    [Fact]
    public void The_same_seed_gives_the_same_messages()
    {
        var fault = Run.Fault(FaultKind.FlameOutWithGas, Quillmere.GloryHole, 5, 0.3);
        Assert.Equal(Run.Studio(7, fault).Advance(Run.At(12)), Run.Studio(7, fault).Advance(Run.At(12)));
    }

    [Fact]
    public void Cutting_the_time_in_pieces_changes_nothing()
    {
        var (whole, pieces) = (Run.Studio(3), Run.Studio(3));
        var cut = new List<DeviceMessage>();
        for (var minutes = 0.0; minutes <= 360; minutes += 0.37) cut.AddRange(pieces.Advance(Run.At(minutes / 60)));
        cut.AddRange(pieces.Advance(Run.At(6)));
        Assert.Equal(whole.Advance(Run.At(6)), cut);
    }

    [Fact]
    public void Another_seed_hides_another_plant()
    {
        var (one, other) = (Run.Studio(1).Truth.Parameters, Run.Studio(2).Truth.Parameters);
        Assert.NotEqual(one.CalorificMegajoulesPerCubicMetre, other.CalorificMegajoulesPerCubicMetre);
        Assert.NotEqual(one.ForgottenShare, other.ForgottenShare);
    }

    [Fact]
    public void Sampling_more_often_changes_neither_people_nor_plant()
    {
        var (often, seldom) = (new SimulatedStudio(Run.Options(4, 10)), new SimulatedStudio(Run.Options(4, 60)));
        often.Advance(Run.At(24));
        seldom.Advance(Run.At(24));
        Assert.Equal(often.Truth.GlassKilograms, seldom.Truth.GlassKilograms);
        Assert.Equal(often.Truth.FurnaceFuel, seldom.Truth.FurnaceFuel);
    }

    [Fact]
    public void Messages_come_in_time_order_and_never_from_the_future()
    {
        var messages = Run.Studio().Advance(Run.At(10));
        for (var i = 1; i < messages.Count; i++) Assert.True(messages[i - 1].At <= messages[i].At);
        Assert.True(messages[^1].At <= Run.At(10));
    }

    [Fact]
    public void A_studio_can_begin_in_the_middle_of_the_night()
    {
        var studio = new SimulatedStudio(new SimulationOptions { Start = Instant.FromUtc(2026, 3, 5, 0, 30), Seed = 2 });
        Assert.Equal("cool-down", studio.ModeOf(Quillmere.FirstAnnealer));
        Assert.Equal("off", studio.ModeOf(Quillmere.GloryHole));
        Assert.InRange(studio.Truth.FirstAnnealerCelsius, 100, 300);
        Assert.InRange(studio.Truth.CrownCelsius, 1190, 1210);
        studio.Advance(studio.Now + Duration.FromMinutes(20));
        Assert.InRange(studio.Truth.CrownCelsius, 1190, 1210);
    }
}
