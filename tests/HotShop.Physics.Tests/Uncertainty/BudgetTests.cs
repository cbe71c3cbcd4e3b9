using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;
using Xunit;

namespace HotShop.Physics.Tests.Uncertainty;

public class BudgetTests
{
    [Fact]
    public void Shares_add_up_and_the_largest_doubt_stands_first()
    {
        var budget = EnergyBudgets.Gas(1321, 103_425, 20, new GasDoubts());
        Assert.Equal(1, budget.Shares.Sum(s => s.Share), 12);
        Assert.Equal("heating value", budget.Shares[0].Of.Name);
        Assert.Equal(4.0 / 3 / (1.7696823 * 1.7696823), budget.Shares[0].Share, 6);
        Assert.All(new Budget(5).Shares, _ => Assert.Fail("nothing has a share of nothing"));
        Assert.Equal(0, new Budget(5).HalfWidth95);
    }

    [Fact]
    public void One_meter_over_a_month_adds_up_and_noise_partly_cancels()
    {
        var day = EnergyBudgets.Electricity(40, 2, "main").With(new Contribution("noise", 0.5));
        var month = Budget.Sum([.. Enumerable.Repeat(day, 30)]);
        Assert.Equal(1200, month.Value, 9);
        Assert.Equal(double.Hypot(1200 * 0.02 / Math.Sqrt(3), 0.5 * Math.Sqrt(30)), month.StandardUncertainty, 9);
        Assert.Equal(2, month.Contributions.Count);
        Assert.Equal(CommonAndOwn.Sum(Enumerable.Repeat(CommonAndOwn.Relative(40, 0.02 / Math.Sqrt(3), 0.0125), 30)).Estimate.StandardUncertainty, month.StandardUncertainty, 9);
    }

    [Fact]
    public void Two_meters_do_not_share_their_class_but_share_the_heating_value()
    {
        var two = Budget.Sum(EnergyBudgets.Gas(100, 103_425, 20, new GasDoubts(), "furnace"), EnergyBudgets.Gas(100, 103_425, 20, new GasDoubts(), "glory hole"));
        Assert.Equal(6, two.Contributions.Count);
        Assert.Equal(200 * 0.02 / Math.Sqrt(3), two.Contributions.Single(c => c.Name == "heating value").Effect, 9);
        Assert.Equal(Math.Sqrt(2) * 1.5 / Math.Sqrt(3), double.Hypot(two.Contributions.Single(c => c.Name == "class of furnace").Effect, two.Contributions.Single(c => c.Name == "class of glory hole").Effect), 9);
    }

    [Fact]
    public void What_two_months_have_in_common_cancels_in_their_difference_and_their_ratio()
    {
        var (first, second) = (EnergyBudgets.Electricity(1000, 2), EnergyBudgets.Electricity(1000, 2));
        Assert.Equal(0, first.Less(second).HalfWidth95, 9);
        Assert.Equal(0, first.Per(second).HalfWidth95, 9);
        Assert.Equal(2, first.Less(EnergyBudgets.Electricity(900, 2)).HalfWidth95 / 0.95, 9);
        Assert.Equal(double.Hypot(first.StandardUncertainty, second.StandardUncertainty), first.Less(EnergyBudgets.Electricity(1000, 2, "another")).StandardUncertainty, 9);
    }

    [Fact]
    public void Correlation_one_adds_and_minus_one_cancels()
    {
        var budget = new Budget(10, new Contribution("a", 3), new Contribution("b", 3));
        Assert.Equal(6, budget.Correlated("a", "b", 1).StandardUncertainty, 9);
        Assert.Equal(0, budget.Correlated("a", "b", -1).StandardUncertainty, 9);
        Assert.Equal(6 * Quantiles.Normal95, budget.Correlated("a", "b", 1).HalfWidth95, 9);
        // Part of another budget, it keeps its variance.
        Assert.Equal(6, budget.Correlated("a", "b", 1).Times(1).StandardUncertainty, 9);
        Assert.Equal("a, b", budget.Correlated("a", "b", 1).Times(1).Contributions.Single().Name);
        Assert.Throws<ArgumentException>(() => budget.Correlated("a", "a", 0.5));
        Assert.Throws<ArgumentException>(() => budget.Correlated("a", "c", 0.5));
        Assert.Throws<ArgumentOutOfRangeException>(() => budget.Correlated("a", "b", 1.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => budget.Correlated("a", "b", -1.001));
        Assert.Throws<ArgumentOutOfRangeException>(() => budget.Correlated("a", "b", double.NaN));
    }

    [Fact]
    public void Correlated_rectangles_count_as_normal_and_the_rest_keeps_its_shape()
    {
        var pair = new Budget(0, Contribution.Rectangular("a", 0.1), Contribution.Rectangular("b", 0.1), Contribution.Rectangular("c", 1)).Correlated("a", "b", 0.5);
        var same = new Budget(0, new Contribution("a and b", Math.Sqrt(3 * 0.01 / 3)), Contribution.Rectangular("c", 1));
        Assert.Equal(same.HalfWidth95, pair.HalfWidth95, 9);
    }

    [Fact]
    public void Few_degrees_of_freedom_widen_the_interval()
    {
        double[] readings = [1149, 1151, 1150, 1152];
        var mean = Contribution.Mean("readings", readings);
        Assert.Equal(3, mean.DegreesOfFreedom);
        Assert.Equal(Math.Sqrt(5.0 / 3 / 4), mean.StandardUncertainty, 12);
        Assert.Equal(3.182446 * mean.StandardUncertainty, new Budget(1150.5, mean).HalfWidth95, 5);
        Assert.Equal(double.PositiveInfinity, new Budget(0, new Contribution("known", 1)).EffectiveDegreesOfFreedom);
        // Nearly six degrees count as five.
        Assert.Equal(Quantiles.TwoSided(0.95, 5), new Budget(0, new Contribution("few", 1, DegreesOfFreedom: 5.99)).HalfWidth95, 12);
        Assert.Equal(Quantiles.TwoSided(0.95, 0.5), new Budget(0, new Contribution("fewer", 1, DegreesOfFreedom: 0.5)).HalfWidth95, 6);
        Assert.Throws<ArgumentException>(() => Contribution.Mean("one", [1.0]));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Contribution("none", 1, DegreesOfFreedom: 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new Contribution("nan", double.NaN));
    }

    [Fact]
    public void Independent_errors_of_one_name_keep_their_degrees_of_freedom_in_a_sum()
    {
        var one = new Budget(1, new Contribution("readings", 1, DegreesOfFreedom: 3));
        Assert.Equal(6, Budget.Sum(one, one).EffectiveDegreesOfFreedom, 9);
        Assert.Equal(Math.Sqrt(2), Budget.Sum(one, one).StandardUncertainty, 12);
    }

    // For a single error the two procedures must agree whatever its shape; for a product the half-widths of first order and of drawing agree to a per cent.
    [Theory, InlineData(Shape.Normal), InlineData(Shape.Rectangular), InlineData(Shape.Triangular)]
    public void Drawing_agrees_with_the_budget(Shape shape)
    {
        var (a, b) = (new Contribution("a", 0.2, shape), new Contribution("b", 0.05, shape));
        var drawn = MonteCarlo.Of([(10, a), (5, b)], x => x[0] * x[1], 200_000, seed: 7);
        var budget = new Budget(50, a with { Sensitivity = 5 }, b with { Sensitivity = 10 });
        var (low, high) = drawn.Interval();
        Assert.Equal(1, drawn.StandardUncertainty / budget.StandardUncertainty, 0.01);
        Assert.Equal(1, (high - low) / 2 / budget.HalfWidth95, 0.01);
        Assert.Equal(50, drawn.Mean, 0.02);
        Assert.Equal(1, (budget.HalfWidth(0.8) * 2) / (drawn.Interval(0.8).High - drawn.Interval(0.8).Low), 0.01);
    }

    [Fact]
    public void The_same_seed_draws_the_same_and_few_degrees_of_freedom_draw_wide()
    {
        Draws Drawn(int seed) => MonteCarlo.Of([(0, new Contribution("t", 1, DegreesOfFreedom: 4))], x => x[0], 100_000, seed);
        Assert.Equal(Drawn(3).Interval(), Drawn(3).Interval());
        Assert.NotEqual(Drawn(3).Interval(), Drawn(4).Interval());
        Assert.Equal(2.776, (Drawn(3).Interval().High - Drawn(3).Interval().Low) / 2, 0.05);
        Assert.Throws<ArgumentOutOfRangeException>(() => Drawn(3).Interval(1));
        Assert.Throws<ArgumentOutOfRangeException>(() => MonteCarlo.Of([], _ => 0, 1, 1));
    }

    [Fact]
    public void An_estimate_keeps_the_budgets_interval_and_scales_with_what_is_exact()
    {
        var budget = EnergyBudgets.Electricity(400, 2);
        var estimate = budget.Estimate;
        Assert.Equal((budget.Low95, budget.High95), (estimate.Low95, estimate.High95));
        Assert.Equal(budget.HalfWidth95 / 4, (estimate / Estimate.Exact(4)).HalfWidth95, 12);
        Assert.Equal(budget.HalfWidth95 * 4, (Estimate.Exact(4) * estimate).HalfWidth95, 9);
        Assert.Equal(budget.HalfWidth95, (estimate - Estimate.Exact(4)).HalfWidth95, 9);
        Assert.Equal(Quantiles.Normal95, (estimate + estimate).CoverageFactor95, 12);
        Assert.Equal((393.35, 406.65), (Math.Round((Estimate.WithinLimits(400, 7)).Low95, 9), Math.Round(Estimate.WithinLimits(400, 7).High95, 9)));
        Assert.Equal(Quantiles.Normal95, default(Estimate).CoverageFactor95);
        Assert.Equal(new Estimate(3, 0), new Estimate(3, 0).WithHalfWidth95(0));
    }

    [Fact]
    public void A_common_error_cancels_in_a_difference_and_adds_in_a_sum()
    {
        var (a, b) = (CommonAndOwn.Relative(100, 0.02, 0.01), CommonAndOwn.Relative(60, 0.02));
        Assert.Equal(new CommonAndOwn(160, 3.2, 1), a + b);
        Assert.Equal(0.8, (a - b).Common, 12);
        Assert.Equal(new CommonAndOwn(-200, -4, 2), a * -2);
        Assert.Equal(double.Hypot(3.2, 1), (a + b).Estimate.StandardUncertainty, 12);
    }

    [Fact]
    public void No_class_promises_anything_beyond_its_range()
    {
        Assert.Null(MeterClass.GasLimitPercent(1.5, 0.039, 0.04, 6));
        Assert.Null(MeterClass.GasLimitPercent(1.5, 6.01, 0.04, 6));
        Assert.Null(MeterClass.ElectricityLimitPercent('D'));
        Assert.NotNull(MeterClass.ScaleLimitKilograms(200, 0.02));
        Assert.Equal(0.01, MeterClass.ScaleLimitKilograms(5, 0.02)!.Value, 1e-12);
        Assert.Null(MeterClass.ScaleLimitKilograms(200.02, 0.02));
    }

    // A generator that always gives the end of its range shows the end of the error's.
    [Fact]
    public void The_largest_draw_lies_at_the_limit()
    {
        var (least, most) = (new Constant(0), new Constant(1));
        Assert.Equal(-1, Contribution.Rectangular("a", 1).Draw(least), 12);
        Assert.Equal(1, Contribution.Rectangular("a", 1).Draw(most), 12);
        Assert.Equal(-1, Contribution.Triangular("a", 1).Draw(least), 12);
        Assert.Equal(1, Contribution.Triangular("a", 1).Draw(most), 12);
    }

    sealed class Constant(double value) : Random(0)
    {
        public override double NextDouble() => value;
    }

    [Theory, InlineData(1e-9), InlineData(1), InlineData(1e9)]
    public void The_interval_follows_the_unit(double unit)
    {
        var budget = new Budget(0, Contribution.Rectangular("a", unit), Contribution.Rectangular("b", unit / 2));
        Assert.Equal(1.5 - Math.Sqrt(0.1), budget.HalfWidth95 / unit, 6);
    }

    // Two rectangles of which one hardly matters: the series is longest there.
    [Theory, InlineData(1e-2), InlineData(1e-4), InlineData(1e-8)]
    public void A_small_error_beside_a_large_one_changes_little(double small) =>
        Assert.Equal(0.95, new Budget(0, Contribution.Rectangular("a", 1), Contribution.Rectangular("b", small)).HalfWidth95, 4);

    [Fact]
    public void Few_values_widen_an_estimate_to_Students_half_width() =>
        Assert.Equal(3.182446 * 2, new Estimate(5, 2).WidenedByStudent(3).HalfWidth95, 5);

    [Fact]
    public void A_certificates_uncertainty_is_divided_by_its_factor() => Assert.Equal(1.5, new Budget(0, Contribution.Certificate("certificate", 3, 2)).StandardUncertainty, 12);
}
