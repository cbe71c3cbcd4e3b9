using HotShop.Physics.Statistics;

namespace HotShop.Checks.Statistics;

/// <summary>Carbon dioxide of a gas furnace over its own past and the feed some steps before.</summary>
static class GasFurnaceChecks
{
    const string Furnace = "Box and Jenkins' gas furnace (series J), least squares by R 4.2.2";

    static readonly string[] Values = ["4.866931895", "1.469760831", "-0.560927341", "-0.486363529", "-0.183495266", "0.390283148"];
    static readonly string[] Errors = ["0.795528", "0.038943", "0.030168", "0.077054", "0.152313", "0.102044"];
    static readonly string[] Names = ["constant", "y one step before", "y two steps before", "feed three steps before", "feed four steps before", "feed five steps before"];

    static readonly Lazy<LinearFit> Fit = new(() =>
    {
        var rows = Alike.Rows([.. Table.Fields("gas-furnace-sums.csv").Select(f => Table.Numbers(f))], 291);
        return LinearFit.Of([.. rows.Select(r => r[..6])], [.. rows.Select(r => r[6])])!;
    });

    public static IEnumerable<Check> All =>
    [
        // Eight digits: the sums of squares that stand for the rows have lost the others.
        .. Values.Select((value, i) => new Check($"gas furnace, {Names[i]}", value, "", 2e-8, Furnace, Standing.Computed, () => Fit.Value.Coefficients[i])),
        .. Errors.Select((value, i) => Check.Printed($"gas furnace, standard error of {Names[i]}", value, "", Furnace, () => Fit.Value.Coefficient(i).StandardUncertainty, Standing.Computed)),
        Check.Printed("gas furnace, residual variance", "0.0626273", "", Furnace, () => Fit.Value.ResidualSumOfSquares / Fit.Value.DegreesOfFreedom, Standing.Computed),
    ];
}
