using HotShop.Physics.Pot;
using NodaTime;
using Xunit;

namespace HotShop.Physics.Tests.Pot;

public class PotCoverageTests(ITestOutputHelper output)
{
    const int Seeds = 100, Days = 5;

    [Fact]
    public void The_interval_holds_the_hidden_truth_nine_times_in_ten_and_is_narrow_enough_to_plan_by()
    {
        var (held, asked) = (0, 0);
        var halfWidths = new List<double>();
        for (var seed = 0; seed < Seeds; seed++)
        {
            var studio = new ForgetfulStudio(seed, Days);
            var moments = Enumerable.Range(0, Days * 24).Select(h => ForgetfulStudio.FirstDay + Duration.FromHours(h)).ToArray();
            foreach (var state in new PotEstimator(studio.Pot).Trace(moments, studio.Log))
            {
                var truth = studio.TrueKilograms(state.At);
                asked++;
                if (truth >= state.MassKilogramsLow95 && truth <= state.MassKilogramsHigh95) held++;
                halfWidths.Add(state.HalfWidthKilograms / state.FullKilograms);
            }
        }
        halfWidths.Sort();
        var (coverage, median) = ((double)held / asked, halfWidths[halfWidths.Count / 2]);
        output.WriteLine($"coverage {coverage:P1}, median half-width {median:P1} of the pot, worst tenth {halfWidths[halfWidths.Count * 9 / 10]:P1}");
        Assert.True(coverage >= 0.90, $"coverage {coverage:P1}");
        // An interval may not buy its coverage with width: dips and a day's gathers alone allow this.
        Assert.True(median <= 0.12, $"median half-width {median:P1}");
        Assert.True(coverage <= 0.995, $"coverage {coverage:P1}: the interval is wider than it says");
    }
}
