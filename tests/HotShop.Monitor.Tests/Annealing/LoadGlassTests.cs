using HotShop.Monitor.Annealing;
using HotShop.Physics.Annealing;
using HotShop.Physics.Glass;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Annealing;

/// <summary>A curve against the glass that is on it.</summary>
public sealed class LoadGlassTests
{
    static LoadGlassAnswer Held(double celsius, GlassProfile glass) =>
        LoadGlassAnswer.Of(new AnnealingCurve(Instant.FromUtc(2026, 3, 1, 0, 0), celsius, [new Stage.Hold(Duration.FromHours(2)), new Stage.Ramp(60, 20)]), glass);

    [Fact] public void A_studio_curve_suits_studio_glass()
    {
        var answer = Held(495, GlassProfile.SoftStudioSodaLime);
        Assert.False(answer.IsLow);
        Assert.Equal("It cools soft studio soda-lime from its annealing point, 495 °C (923 °F), through its strain point, 469 °C (877 °F), at up to 20 °C (36 °F) an hour: whether that suits the thickest part is for a person to judge.", answer.Words);
        // Two hours held, then 25.7 K to the strain point at 20 K/h.
        Assert.Equal(2 + 25.7 / 20, answer.HoursAboveStrainPoint, 0.01);
        Assert.Equal(20, answer.FastestCoolingKelvinPerHour!.Value, 1e-9);
    }

    [Fact] public void The_same_curve_leaves_the_stress_in_window_glass()
    {
        var answer = Held(495, GlassProfile.WindowSodaLime);
        Assert.True(answer.IsLow);
        Assert.StartsWith("It stays below the strain point of window soda-lime, 522 °C (971 °F): no stress leaves. Its annealing point is 549 °C (1021 °F).", answer.Words, StringComparison.Ordinal);
        Assert.Equal((0.0, (double?)null), (answer.HoursAboveStrainPoint, answer.FastestCoolingKelvinPerHour));
    }

    [Fact] public void A_curve_a_little_low_takes_hours()
    {
        var answer = Held(525, GlassProfile.WindowSodaLime);
        Assert.True(answer.IsLow);
        Assert.StartsWith("It stays 24 °C (44 °F) below the annealing point of window soda-lime", answer.Words, StringComparison.Ordinal);
    }

    [Fact] public void Window_curves_are_hot_for_studio_glass() =>
        Assert.StartsWith("It goes 55 °C (99 °F) above the annealing point of soft studio soda-lime, 495 °C (923 °F): ware may mark or sag. It cools", Held(550, GlassProfile.SoftStudioSodaLime).Words, StringComparison.Ordinal);

    [Fact] public void A_curve_that_never_cools_says_so()
    {
        var hold = LoadGlassAnswer.Of(new AnnealingCurve(Instant.FromUtc(2026, 3, 1, 0, 0), 495, [new Stage.Hold(Duration.FromHours(2))]), GlassProfile.SoftStudioSodaLime);
        Assert.Equal("It does not cool soft studio soda-lime through its strain point, 469 °C (877 °F).", hold.Words);
    }
}
