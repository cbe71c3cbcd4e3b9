using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>A house's weekly gas over outdoor temperature, before and after its walls were filled: the shape of a studio's gas before and after a repair.</summary>
static class HouseGasChecks
{
    const string House = "Whiteside's house (Hand et al. 1993), least squares by R 4.2.2";

    /// <summary>Rows of 1, temperature, its square and gas, alike in all sums to the measured weeks.</summary>
    static double[][] Weeks(string period, int count) =>
        Alike.Rows([.. Table.Fields("house-gas-sums.csv").Where(f => f[0] == period).Select(f => Table.Numbers(f.Skip(1)))], count);

    static readonly Lazy<double[][]> Before = new(() => Weeks("before", 26)), After = new(() => Weeks("after", 30));

    static LinearFit Of(IEnumerable<double[]> before, IEnumerable<double[]> after, Func<double[], double, double[]> regressors) => LinearFit.Of(
        [.. before.Select(w => regressors(w, 0)), .. after.Select(w => regressors(w, 1))], [.. before.Concat(after).Select(w => w[3])])!;

    static readonly Lazy<LinearFit>
        FirstLine = new(() => Of(Before.Value, [], (w, _) => [w[0], w[1]])),
        SecondLine = new(() => Of([], After.Value, (w, _) => [w[0], w[1]])),
        Parallel = new(() => Of(Before.Value, After.Value, (w, after) => [w[0], w[0] * after, w[1]])),
        Separate = new(() => Of(Before.Value, After.Value, (w, after) => [w[0], w[0] * after, w[1], w[1] * after])),
        Curved = new(() => Of(Before.Value, After.Value, (w, after) => [w[0], w[0] * after, w[1], w[1] * after, w[2], w[2] * after]));

    static Check Line(string what, string value, Func<double> ours) => Check.Printed(what, value, "", House, ours, Standing.Computed);

    public static IEnumerable<Check> All =>
    [
        Line("weeks before: constant", "6.853827699", () => FirstLine.Value.Coefficients[0]),
        Line("weeks before: slope", "-0.393238822", () => FirstLine.Value.Coefficients[1]),
        Line("weeks before: standard error of the constant", "0.118423410", () => FirstLine.Value.Coefficient(0).StandardUncertainty),
        Line("weeks before: standard error of the slope", "0.019586006", () => FirstLine.Value.Coefficient(1).StandardUncertainty),
        Line("weeks before: residual standard deviation", "0.281333740", () => FirstLine.Value.ResidualStandardDeviation),
        Line("weeks after: constant", "4.723849668", () => SecondLine.Value.Coefficients[0]),
        Line("weeks after: slope", "-0.277934952", () => SecondLine.Value.Coefficients[1]),
        Line("weeks after: standard error of the constant", "0.129739421", () => SecondLine.Value.Coefficient(0).StandardUncertainty),
        Line("weeks after: standard error of the slope", "0.025184288", () => SecondLine.Value.Coefficient(1).StandardUncertainty),
        Line("weeks after: residual standard deviation", "0.354848018", () => SecondLine.Value.ResidualStandardDeviation),
        Line("parallel lines: constant", "6.551328707", () => Parallel.Value.Coefficients[0]),
        Line("parallel lines: step from before to after", "-1.565204633", () => Parallel.Value.Coefficients[1]),
        Line("parallel lines: slope", "-0.336696955", () => Parallel.Value.Coefficients[2]),
        Line("parallel lines: standard error of the constant", "0.118086412", () => Parallel.Value.Coefficient(0).StandardUncertainty),
        Line("parallel lines: standard error of the step", "0.097053378", () => Parallel.Value.Coefficient(1).StandardUncertainty),
        Line("parallel lines: standard error of the slope", "0.017763114", () => Parallel.Value.Coefficient(2).StandardUncertainty),
        Line("parallel lines: residual standard deviation", "0.357411619", () => Parallel.Value.ResidualStandardDeviation),
        Line("separate lines: standard error of the constant before", "0.135963973", () => Separate.Value.Coefficient(0).StandardUncertainty),
        Line("separate lines: standard error of the constant after", "0.118096676", () => Separate.Value.At(1, 1, 0, 0).StandardUncertainty),
        Line("separate lines: standard error of the slope before", "0.022487034", () => Separate.Value.Coefficient(2).StandardUncertainty),
        Line("separate lines: standard error of the slope after", "0.022924264", () => Separate.Value.At(0, 0, 1, 1).StandardUncertainty),
        Line("separate lines: residual standard deviation", "0.323004150", () => Separate.Value.ResidualStandardDeviation),
        Line("are the slopes equal: F", "12.89287", () => NestedFits.Of(Parallel.Value, Separate.Value).F),
        Line("are the slopes equal: chance", "0.00073069", () => NestedFits.Of(Parallel.Value, Separate.Value).Chance),
        Line("are the lines straight: F", "2.84079", () => NestedFits.Of(Separate.Value, Curved.Value).F),
        Line("are the lines straight: chance", "0.0678", () => NestedFits.Of(Separate.Value, Curved.Value).Chance),
        Line("curves: residual standard deviation", "0.312143294", () => Curved.Value.ResidualStandardDeviation),
        Line("a further week at 0 °C", "6.853828", () => FirstLine.Value.Next(1, 0).Value),
        Line("a further week at 0 °C, 95 % low", "6.223839", () => FirstLine.Value.Next(1, 0).Low95),
        Line("a further week at 0 °C, 95 % high", "7.483817", () => FirstLine.Value.Next(1, 0).High95),
        Line("a further week at 5 °C", "4.887634", () => FirstLine.Value.Next(1, 5).Value),
        Line("a further week at 5 °C, 95 % low", "4.295759", () => FirstLine.Value.Next(1, 5).Low95),
        Line("a further week at 5 °C, 95 % high", "5.479508", () => FirstLine.Value.Next(1, 5).High95),
    ];
}
