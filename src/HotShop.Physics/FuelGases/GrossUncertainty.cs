using HotShop.Physics.Statistics;

namespace HotShop.Physics.FuelGases;

/// <summary>How well a gross heating value is known that comes from an analysis.</summary>
/// <remarks>Source: ISO 6976:2016, Annex B, for uncorrelated fractions. The gas constant's own part is left out: it is below a millionth of the value.</remarks>
public static class GrossUncertainty
{
    /// <summary>Gross heating value per mole, kJ/mol, with its standard uncertainty.</summary>
    /// <param name="mixture">The analysed gas.</param>
    /// <param name="fractionUncertainties">Standard uncertainty of each mole fraction; what is left out counts as exact.</param>
    public static Estimate PerMole(GasMixture mixture, ReferenceTemperature combustion, IReadOnlyDictionary<GasComponent, double> fractionUncertainties)
    {
        ArgumentNullException.ThrowIfNull(mixture);
        var variance = Analysis(mixture, fractionUncertainties, c => c.GrossKilojoulesPerMole(combustion)) + Tables(mixture, c => c.GrossUncertaintyKilojoulesPerMole);
        return new Estimate(mixture.GrossKilojoulesPerMole(combustion), Math.Sqrt(variance));
    }

    /// <summary>Gross heating value per volume, MJ/m³, with its standard uncertainty.</summary>
    /// <param name="gas">The analysed gas at a reference.</param>
    /// <param name="fractionUncertainties">Standard uncertainty of each mole fraction; what is left out counts as exact.</param>
    public static Estimate PerCubicMetre(GasProperties gas, IReadOnlyDictionary<GasComponent, double> fractionUncertainties)
    {
        ArgumentNullException.ThrowIfNull(gas);
        var combustion = gas.Reference.Combustion;
        var volume = ReferenceTemperatures.Of(gas.Reference.Volume);
        var gross = gas.Mixture.GrossKilojoulesPerMole(combustion);
        // A fraction acts twice: by its heat, and by its share in the gas's deviation from the ideal.
        var perSummation = 2 * gas.PressureRatio * gas.Summation / gas.CompressionFactor;
        var variance = Analysis(gas.Mixture, fractionUncertainties, c => c.GrossKilojoulesPerMole(combustion) / gross + perSummation * c.Summation(volume))
            + Tables(gas.Mixture, c => c.GrossUncertaintyKilojoulesPerMole / gross) + Tables(gas.Mixture, c => perSummation * c.SummationUncertainty);
        return Estimate.Relative(gas.GrossMegajoulesPerCubicMetre, Math.Sqrt(variance));
    }

    static double Analysis(GasMixture mixture, IReadOnlyDictionary<GasComponent, double> uncertainties, Func<GasComponent, double> sensitivity) =>
        mixture.Fractions.Keys.Sum(c => Square(sensitivity(c) * Require.NotNegative(uncertainties.GetValueOrDefault(c))));

    static double Tables(GasMixture mixture, Func<GasComponent, double> uncertainty) => mixture.Fractions.Sum(p => Square(p.Value * uncertainty(p.Key)));

    static double Square(double x) => x * x;
}
