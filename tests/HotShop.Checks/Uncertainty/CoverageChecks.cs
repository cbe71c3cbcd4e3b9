using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Checks.Uncertainty;

/// <summary>How wide an interval must be: factors of the printed tables, and the exact distribution of sums of errors of several shapes.</summary>
static class CoverageChecks
{
    const string Table = "JCGM 100:2008 (GUM), table G.2", Sum = "JCGM 101:2008, 9.2, interval by Monte Carlo and analytically";

    static Check T(double degrees, string printed, double probability = 0.95) => Check.Printed(
        FormattableString.Invariant($"Student's t, {probability * 100} %, {degrees} degrees of freedom"), printed, "", Table, () => Quantiles.TwoSided(probability, degrees), Standing.Memory);

    static Contribution Rectangle(double standardUncertainty) => new("rectangle", standardUncertainty, Shape.Rectangular);

    public static IEnumerable<Check> All =>
    [
        T(1, "12.71"), T(2, "4.30"), T(4, "2.78"), T(10, "2.23"), T(16, "2.12"), T(50, "2.01"), T(double.PositiveInfinity, "1.960"),
        T(16, "2.92", 0.99), T(double.PositiveInfinity, "2.576", 0.99),
        Check.Printed("half-width of 95 % of a normal, standard deviations", "1.959964", "", "any table of the normal distribution", () => Quantiles.Normal95),
        Check.Printed("sum of four normal errors, 95 % half-width", "3.92", "", Sum,
            () => new Budget(0, [.. Enumerable.Repeat(new Contribution("normal", 1), 4)]).HalfWidth95, Standing.Memory),
        Check.Printed("sum of four rectangular errors, 95 % half-width", "3.88", "", Sum,
            () => new Budget(0, [.. Enumerable.Repeat(Rectangle(1), 4)]).HalfWidth95, Standing.Memory),
        Check.Printed("sum of three rectangular errors and one ten times as large, 95 % half-width", "17.0", "", Sum,
            () => new Budget(0, Rectangle(1), Rectangle(1), Rectangle(1), Rectangle(10)).HalfWidth95, Standing.Memory),
        Check.Printed("the same, combined standard uncertainty", "10.1", "", Sum,
            () => new Budget(0, Rectangle(1), Rectangle(1), Rectangle(1), Rectangle(10)).StandardUncertainty, Standing.Memory),
        Computed("four rectangular errors of standard uncertainty 1, 95 % half-width to six digits", "3.87941", Enumerable.Repeat(Rectangle(1), 4)),
        Computed("three rectangular errors of standard uncertainty 1 and one of 10, to six digits", "17.0158", [Rectangle(1), Rectangle(1), Rectangle(1), Rectangle(10)]),
        Computed("one rectangle of ±1: 95 % of it", "0.95", [Contribution.Rectangular("a", 1)]),
        Computed("rectangles of ±1 and ±0.5: a trapezoid", "1.18377", [Contribution.Rectangular("a", 1), Contribution.Rectangular("b", 0.5)]),
        Computed("triangle of ±2: 2 (1 - √0.05)", "1.55279", [Contribution.Triangular("a", 2)]),
        Computed("rectangle of ±1 and a normal of 0.3", "1.18220", [Contribution.Rectangular("a", 1), new("b", 0.3)]),
    ];

    static Check Computed(string what, string value, IEnumerable<Contribution> contributions) =>
        Check.Printed(what, value, "", "convolution of the densities on a grid, apart from this library", () => new Budget(0, [.. contributions]).HalfWidth95, Standing.Computed);
}
