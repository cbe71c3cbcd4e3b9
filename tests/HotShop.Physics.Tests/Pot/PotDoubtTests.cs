using HotShop.Physics.Pot;
using HotShop.Physics.Statistics;
using Xunit;
using static HotShop.Physics.Tests.Some;

namespace HotShop.Physics.Tests.Pot;

/// <summary>Each assumption about a studio by the doubt it causes, worked by hand: variances add where errors are independent.</summary>
public class PotDoubtTests
{
    static readonly GlassMass Pot = new(new CylinderPot(0.20, 0.35));
    static readonly double KilogramsPerMetre = 2360 * Math.PI * 0.20 * 0.20;
    static readonly PotHabits Exact = new()
    {
        GatherBias = 0, GatherBiasPerSize = 0, GatherScatter = 0, MissedPerLogged = 0, MissedPerLoggedSpread = 0, ChargeBias = 0,
        DepthToMassBias = 0, GatherBiasPerDay = 0, MissedPerDay = 0,
    };

    static PotState After(PotHabits habits, Estimate? start, params PotEvent[] log) => new PotEstimator(Pot, habits, start).At(At(20_000), log);

    static void HasDoubt(double standardUncertainty, PotState state) => Assert.Equal(Quantiles.Normal95 * standardUncertainty, state.HalfWidthKilograms, 1e-9);

    [Fact]
    public void What_is_said_of_one_event_is_doubted_as_is_common_practice()
    {
        HasDoubt(0.03 * 20, After(Exact, Estimate.Exact(50), new PotEvent.Charge(At(1), 20)));
        HasDoubt(0.05 * 2, After(Exact, Estimate.Exact(50), new PotEvent.WeighedGather(At(1), 2)));
        HasDoubt(0.10 * 5, After(Exact, Estimate.Exact(50), new PotEvent.LadleOut(At(1), 5)));
        HasDoubt(0.10 * 3, After(Exact, Estimate.Exact(50), new PotEvent.ReturnedGlass(At(1), 3)));
    }

    // The first dip, found m: before it anything from empty to full, so mean F/2 and variance F²/12. Then Kalman's update by hand.
    [Fact]
    public void The_first_dip_is_weighed_against_knowing_nothing()
    {
        const double found = 60;
        var full = KilogramsPerMetre * 0.35;
        var before = full * full / 12;
        var dip = Math.Pow(KilogramsPerMetre * 0.005, 2) + Math.Pow(0.015 * found, 2);
        var state = After(PotHabits.Usual, null, new PotEvent.Dip(At(0), found / KilogramsPerMetre));
        Assert.Equal(full / 2 + before / (before + dip) * (found - full / 2), state.MassKilograms, 1e-9);
        HasDoubt(Math.Sqrt(before - before * before / (before + dip)), state);
    }

    // 30 gathers of 0.4 kg, five days after the last entry: habits have wandered since.
    [Fact]
    public void Habits_wander_from_day_to_day()
    {
        var state = After(PotHabits.Usual, new Estimate(60, 0.5), new PotEvent.Charge(At(0), 0), new PotEvent.Gather(At(5 * 1440), 0.4, 30, GatherSizes.Medium));
        double[] variances =
        [
            0.5 * 0.5, 13.08 * 13.08 * (0.2 * 0.2 + 0.1 * 0.1 + 0.01 * 0.01 * 5), 12 * 12 * (0.09 * 0.09 + 0.02 * 0.02 * 5), 30 * 0.06 * 0.06, 30 * 0.09 * 3 * 0.4 * 0.4,
        ];
        HasDoubt(Math.Sqrt(variances.Sum()), state);
    }

    [Fact]
    public void What_unlogged_days_take_may_be_off_by_half_and_by_more_as_time_goes()
    {
        var state = After(Exact, Estimate.Exact(50), new PotEvent.Charge(At(0), 0), new PotEvent.UnloggedSpan(At(60), At(5 * 1440), 3, 1));
        HasDoubt(Math.Sqrt(1 + 3 * 3 * (0.5 * 0.5 + 0.03 * 0.03 * 5)), state);
    }

    [Theory, InlineData(3.499, false), InlineData(3.501, true)]
    public void A_dip_surprises_beyond_three_and_a_half_deviations(double deviations, bool isSurprise)
    {
        var doubt = Math.Sqrt(1 + Math.Pow(KilogramsPerMetre * 0.004, 2));
        var state = After(Exact, new Estimate(50, 1), new PotEvent.Dip(At(1), (50 + deviations * doubt) / KilogramsPerMetre, 0.004));
        Assert.Equal(isSurprise ? deviations * doubt : 0, state.UnexplainedKilograms, 1e-9);
    }

    // A tally says how many, not when: eighths of its span, each with its share of whole gathers.
    [Theory, InlineData(59, 0), InlineData(60, 1), InlineData(239, 3), InlineData(480, 8)]
    public void A_tally_is_spread_over_eighths_of_its_span(int minutes, int taken)
    {
        var estimator = new PotEstimator(Pot, Exact, Estimate.Exact(50));
        var state = estimator.At(At(minutes), [new PotEvent.Tally(At(0), At(480), [new(GatherSizes.Medium, 0.4, 8)])]);
        Assert.Equal(50 - 0.4 * taken, state.MassKilograms, 1e-9);
    }

    [Fact]
    public void What_is_common_practice_is_what_the_documents_say()
    {
        Assert.Equal((0.15, 0.4, 0.8), (GatherSizes.NominalKilograms[GatherSizes.Small], GatherSizes.NominalKilograms[GatherSizes.Medium], GatherSizes.NominalKilograms[GatherSizes.Large]));
        Assert.Equal((1.0, 0.02), (ChargeMaterial.Cullet.GlassYield, ChargeMaterial.Cullet.RelativeUncertainty));
        Assert.Equal((0.85, 0.03), (ChargeMaterial.Batch.GlassYield, ChargeMaterial.Batch.RelativeUncertainty));
        Assert.Equal((1.0, 0.02), (ChargeMaterial.Frit.GlassYield, ChargeMaterial.Frit.RelativeUncertainty));
    }
}
