using HotShop.Physics.FuelGases;

namespace HotShop.Physics.Combustion;

/// <summary>Excess air from the oxygen that is left in the flue gas.</summary>
/// <remarks>Where no oxygen is left the answer is 0, but a fire that is short of air looks the same: only carbon monoxide tells them apart.</remarks>
public static class ExcessAir
{
    /// <summary>Excess air as a fraction, from the oxygen of a dried sample (a portable analyser).</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="oxygenFraction">From 0 to below that of air, 0.20946; 0.03 for 3 %.</param>
    public static double FromDryOxygen(GasMixture fuel, double oxygenFraction) => FromOxygen(FlueGas.Of(fuel, 0), oxygenFraction, wet: false);

    /// <summary>Excess air as a fraction, from the oxygen of the wet gas (a probe in the flue).</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="oxygenFraction">From 0 to below that of air, 0.20946.</param>
    public static double FromWetOxygen(GasMixture fuel, double oxygenFraction) => FromOxygen(FlueGas.Of(fuel, 0), oxygenFraction, wet: true);

    /// <summary>The rule of thumb O2 / (20.946 - O2). It takes the dry flue gas for as much as the air, and tells an eighth too much for natural gas: shown beside the exact one only to say so.</summary>
    /// <param name="oxygenFraction">From 0 to below that of air, 0.20946.</param>
    public static double QuickRule(double oxygenFraction) =>
        FromShare(oxygenFraction, 1 / DryAir.OxygenFraction, 1 / DryAir.OxygenFraction);

    static double FromOxygen(FlueGas exact, double oxygenFraction, bool wet) =>
        FromShare(oxygenFraction, (wet ? exact.WetMoles : exact.DryMoles) / exact.OxygenNeedMoles, 1 / DryAir.OxygenFraction);

    // Each part of excess air brings its oxygen and adds its whole volume: y (gas + e air) = e oxygen, solved for e. All per mole of the oxygen needed.
    static double FromShare(double oxygenFraction, double gas, double air) =>
        oxygenFraction is >= 0 and < DryAir.OxygenFraction
            ? oxygenFraction * gas / (1 - oxygenFraction * air)
            : throw new ArgumentOutOfRangeException(nameof(oxygenFraction), oxygenFraction, "expected 0 to below the 0.20946 of air");
}
