using HotShop.Monitor.Configuration;
using HotShop.Physics.Energy;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Pot;

/// <summary>The glass that a pot is reckoned with, and where its figures come from. Heat is for warming from 20 °C to the temperature at which
/// the pot is dipped.</summary>
public sealed record PotGlassAnswer(
    string Name, double MeltingPointCelsius, double WorkingPointCelsius, double SofteningPointCelsius, double AnnealingPointCelsius, double StrainPointCelsius,
    double MeltKgPerM3, double MeltKgPerM3Low95, double MeltKgPerM3High95, double ColdKgPerM3, double MeltAtCelsius, double ViscosityPaS,
    double CulletKwhPerKg, double CulletKwhPerKgLow95, double CulletKwhPerKgHigh95, double BatchKwhPerKg, double BatchKwhPerKgLow95, double BatchKwhPerKgHigh95,
    double BatchYield, double BatchYieldLow95, double BatchYieldHigh95, bool BatchYieldIsUsual, string Source)
{
    const double RoomCelsius = 20;

    public static PotGlassAnswer Of(PotPlan pot)
    {
        var (glass, celsius) = (pot.Profile, (pot.Options.Glass ?? new GlassOptions()).DippedCelsius);
        var batch = pot.Yielding(Physics.Pot.ChargeMaterial.Batch);
        var density = new Budget(pot.Glass.DensityKilogramsPerCubicMetre, Contribution.CommonWithin("density", pot.Glass.DensityKilogramsPerCubicMetre * GlassBudgets.DensityPercent / 100));
        var (cullet, charge) = (Heat(glass.MeltingKilojoulesPerKilogram(RoomCelsius, celsius, batchShare: 0)), Heat(glass.MeltingKilojoulesPerKilogram(RoomCelsius, celsius, batchShare: 1)));
        var yield = new ChargeDoubts(ScalePercent: 0).Glass(1, batch, pot.SaysYieldOf(batch));
        return new(glass.Name, glass.MeltingPointCelsius, glass.WorkingPointCelsius, glass.SofteningPointCelsius, glass.AnnealingPointCelsius, glass.StrainPointCelsius,
            density.Value, density.Low95, density.High95, glass.ColdKilogramsPerCubicMetre, celsius, glass.Viscosity.PascalSeconds(celsius),
            cullet.Value, cullet.Low95, cullet.High95, charge.Value, charge.Low95, charge.High95, yield.Value, yield.Low95, Math.Min(1, yield.High95), !pot.SaysYieldOf(batch), glass.Source);
    }

    /// <summary>kWh/kg.</summary>
    static Budget Heat(double kilojoulesPerKilogram) => GlassBudgets.Heat(kilojoulesPerKilogram).Times(1 / (1000 * EnergyUnits.MegajoulesPerKilowattHour));
}
