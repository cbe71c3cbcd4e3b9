using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Checks.Uncertainty;

/// <summary>Propagation by drawing: the examples of Supplement 1 to the Guide whose models are bent, so that a budget of first order fails them.</summary>
static class DrawnChecks
{
    const int Trials = 200_000;
    const string Mass = "JCGM 101:2008, 9.3, Monte Carlo", Loss = "JCGM 101:2008, 9.4, Monte Carlo and analytically";

    /// <summary>Mass of a weight against a reference in air, mg beyond the nominal 100 g.</summary>
    static readonly Lazy<Draws> Weight = new(() => MonteCarlo.Of(
        [(100_000.000, new("reference", 0.050)), (1.234, new("trimming", 0.020)), (1.20, Contribution.Rectangular("air", 0.10)),
            (8000, Contribution.Rectangular("weight", 1000)), (8000, Contribution.Rectangular("reference's density", 50))],
        x => (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000, Trials, seed: 1));

    /// <summary>Sum of two squares of normal inputs, times a million.</summary>
    static Lazy<Draws> Squares(double first) => new(() => MonteCarlo.Of(
        [(first, new("real", 0.005)), (0, new("imaginary", 0.005))], x => 1e6 * (x[0] * x[0] + x[1] * x[1]), Trials, seed: 1));

    static readonly Lazy<Draws> Zero = Squares(0), Small = Squares(0.010), Large = Squares(0.050);

    /// <summary>The Guide's end gauge with its whole model, nm: what the room and the expansion do together counts as well.</summary>
    static readonly Lazy<Draws> EndGauge = new(() => MonteCarlo.Of(
        [(50_000_623, new("standard", 25)), (215, new("comparison", 9.7)), (0, new("difference of expansion", 0.58e-6)), (-0.1, new("room", 0.41)),
            (11.5e-6, new("expansion", 1.2e-6)), (0, new("difference of temperature", 0.029))],
        x => x[0] + x[1] - x[0] * (x[2] * x[3] + x[4] * x[5]), Trials, seed: 1));

    public static IEnumerable<Check> All =>
    [
        new("end gauge with terms of second order, standard uncertainty", "34", "nm", 0.5, "JCGM 100:2008 (GUM), H.1.7", Standing.Read, () => EndGauge.Value.StandardUncertainty),
        new("mass of a weight in air, mg", "1.2341", "mg", 0.0006, Mass, Standing.Memory, () => Weight.Value.Mean),
        new("mass of a weight in air, standard uncertainty", "0.0754", "mg", 0.0004, Mass, Standing.Memory, () => Weight.Value.StandardUncertainty),
        new("mass of a weight in air, lower end of the shortest 95 % interval", "1.0834", "mg", 0.004, Mass, Standing.Memory, () => Weight.Value.ShortestInterval().Low),
        new("mass of a weight in air, upper end of the shortest 95 % interval", "1.3825", "mg", 0.004, Mass, Standing.Memory, () => Weight.Value.ShortestInterval().High),
        new("comparison loss, input 0: mean", "50", "1e-6", 0.5, Loss, Standing.Memory, () => Zero.Value.Mean),
        new("comparison loss, input 0: standard uncertainty", "50", "1e-6", 0.5, Loss, Standing.Memory, () => Zero.Value.StandardUncertainty),
        new("comparison loss, input 0: upper end of the shortest 95 % interval", "150", "1e-6", 1.5, Loss, Standing.Memory, () => Zero.Value.ShortestInterval().High),
        new("comparison loss, input 0.010: mean", "150", "1e-6", 1, Loss, Standing.Memory, () => Small.Value.Mean),
        new("comparison loss, input 0.010: standard uncertainty", "112", "1e-6", 0.7, Loss, Standing.Memory, () => Small.Value.StandardUncertainty),
        new("comparison loss, input 0.010: upper end of the shortest 95 % interval", "367", "1e-6", 3, Loss, Standing.Memory, () => Small.Value.ShortestInterval().High),
        new("comparison loss, input 0.050: standard uncertainty", "502", "1e-6", 3, Loss, Standing.Memory, () => Large.Value.StandardUncertainty),
        new("comparison loss, input 0.050: lower end of the shortest 95 % interval", "1590", "1e-6", 20, Loss, Standing.Memory, () => Large.Value.ShortestInterval().Low),
        new("comparison loss, input 0.050: upper end of the shortest 95 % interval", "3543", "1e-6", 20, Loss, Standing.Memory, () => Large.Value.ShortestInterval().High),
    ];
}
