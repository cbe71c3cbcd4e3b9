using HotShop.Monitor.Configuration;
using HotShop.Physics.Energy;

namespace HotShop.Monitor.Pot;

/// <summary>The glass that a pot is reckoned with, and where its figures come from. Heat is for warming from 20 °C to the temperature at which
/// the pot is dipped.</summary>
public sealed record PotGlassAnswer(
    string Name, double MeltingPointCelsius, double WorkingPointCelsius, double SofteningPointCelsius, double AnnealingPointCelsius, double StrainPointCelsius,
    double MeltKgPerM3, double ColdKgPerM3, double MeltAtCelsius, double ViscosityPaS, double CulletKwhPerKg, double BatchKwhPerKg, double BatchYield, bool BatchYieldIsUsual, string Source)
{
    const double RoomCelsius = 20;

    public static PotGlassAnswer Of(PotPlan pot)
    {
        var (glass, celsius) = (pot.Profile, (pot.Options.Glass ?? new GlassOptions()).DippedCelsius);
        return new(glass.Name, glass.MeltingPointCelsius, glass.WorkingPointCelsius, glass.SofteningPointCelsius, glass.AnnealingPointCelsius, glass.StrainPointCelsius,
            pot.Glass.DensityKilogramsPerCubicMetre, glass.ColdKilogramsPerCubicMetre, celsius, glass.Viscosity.PascalSeconds(celsius),
            KilowattHours(glass.MeltingKilojoulesPerKilogram(RoomCelsius, celsius, batchShare: 0)), KilowattHours(glass.MeltingKilojoulesPerKilogram(RoomCelsius, celsius, batchShare: 1)),
            pot.Yielding(Physics.Pot.ChargeMaterial.Batch).GlassYield, !pot.SaysYieldOf(Physics.Pot.ChargeMaterial.Batch), glass.Source);
    }

    static double KilowattHours(double kilojoules) => kilojoules / (1000 * EnergyUnits.MegajoulesPerKilowattHour);
}
