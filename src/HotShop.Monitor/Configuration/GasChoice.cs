using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Monitor.Configuration;

/// <summary>What the gas of a configuration is: what is left out follows from the profile, the composition, or natural gas.</summary>
public static class GasChoice
{
    /// <summary>A usual natural gas, kWh/m³ gross, where nothing is written (common practice).</summary>
    const double UsualKilowattHoursPerCubicMetre = 10.55;

    public static BaseConditions BaseConditions(this GasOptions gas) => gas.Base switch
    {
        "us" => HotShop.Physics.Energy.BaseConditions.Us,
        "normal" => HotShop.Physics.Energy.BaseConditions.Normal,
        _ => HotShop.Physics.Energy.BaseConditions.Iso13443,
    };

    /// <summary>What burns: for the air it needs and the heat its flue gas takes along. Pipeline gases differ little in that.</summary>
    public static GasMixture Mixture(this GasOptions gas) =>
        (gas.Composition is { } composition ? GasComposition.Read(composition).Mixture : null) ?? ProfileOf(gas).Mixture;

    /// <summary>Gross heating value of that mixture, kWh/m³ at the base conditions.</summary>
    public static double WorkedOutKilowattHoursPerCubicMetre(this GasOptions gas) =>
        gas.Mixture().At(GasReference.For(gas.BaseConditions())).GrossKilowattHoursPerCubicMetre;

    /// <summary>The same options with everything filled in that figures are computed from.</summary>
    public static GasOptions InForce(this GasOptions gas)
    {
        var isKnown = gas.Profile is not null || gas.Composition is not null;
        var profile = ProfileOf(gas);
        var isPublished = gas.Composition is null && profile.IsCarbonDioxidePublished;
        return gas with
        {
            Name = gas.Name ?? (gas.Composition is null ? profile.Name : "gas by analysis"),
            GrossKilowattHoursPerCubicMetre = gas.GrossKilowattHoursPerCubicMetre ?? (isKnown ? gas.WorkedOutKilowattHoursPerCubicMetre() : UsualKilowattHoursPerCubicMetre),
            // Five digits, as such factors are printed.
            CarbonDioxideKilogramsPerKilowattHour = gas.CarbonDioxideKilogramsPerKilowattHour
                ?? Math.Round(gas.Composition is null ? profile.CarbonDioxideKilogramsPerKilowattHour : gas.Mixture().CarbonDioxideKilogramsPerGrossKilowattHour, 5),
            CarbonDioxideSource = gas.CarbonDioxideSource ?? (isPublished || gas.CarbonDioxideKilogramsPerKilowattHour is not null ? "40 CFR 98 table C-1, gross" : "carbon of the gas, ISO 6976, gross"),
            CarbonDioxideYear = gas.CarbonDioxideYear ?? 2016,
        };
    }

    static GasProfile ProfileOf(GasOptions gas) => (gas.Profile is { } id ? GasProfile.Find(id) : null) ?? GasProfile.NaturalGas;
}
