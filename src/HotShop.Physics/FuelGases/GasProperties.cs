using HotShop.Physics.Energy;

namespace HotShop.Physics.FuelGases;

/// <summary>A cubic metre of a real fuel gas at a reference. Source: ISO 6976:2016.</summary>
public sealed class GasProperties
{
    const double LeastPascals = 90_000, MostPascals = 110_000;

    readonly double volumetricMolesPerCubicMetre;

    /// <exception cref="ArgumentException">The base is at no temperature of the standard, or its pressure is outside 90 to 110 kPa.</exception>
    internal GasProperties(GasMixture mixture, GasReference reference)
    {
        ArgumentNullException.ThrowIfNull(reference);
        (Mixture, Reference) = (mixture, reference);
        var pascals = reference.Volume.PressurePascals;
        if (pascals is < LeastPascals or > MostPascals) throw new ArgumentException($"ISO 6976 holds from 90 to 110 kPa, {reference.Volume.Name} is outside", nameof(reference));
        var temperature = ReferenceTemperatures.Of(reference.Volume);
        PressureRatio = pascals / Atmosphere.StandardPascals;
        Summation = mixture.Sum(c => c.Summation(temperature));
        CompressionFactor = 1 - PressureRatio * Summation * Summation;
        volumetricMolesPerCubicMetre = pascals / (GasTable.Iso6976.GasConstantJoulesPerMoleKelvin * PhysicalConstants.Kelvin(temperature.Celsius()) * CompressionFactor);
        // The air's deviation from an ideal gas grows with pressure as the gas's does.
        AirCompression = 1 - PressureRatio * (1 - GasTable.Iso6976.AirCompression[temperature.Key()]);
    }

    public GasMixture Mixture { get; }
    public GasReference Reference { get; }

    /// <summary>Z: the real volume over that of an ideal gas.</summary>
    public double CompressionFactor { get; }

    /// <summary>Gross heating value, MJ/m³.</summary>
    public double GrossMegajoulesPerCubicMetre => Mixture.GrossKilojoulesPerMole(Reference.Combustion) * volumetricMolesPerCubicMetre / 1000;

    /// <summary>Net heating value, MJ/m³.</summary>
    public double NetMegajoulesPerCubicMetre => Mixture.NetKilojoulesPerMole(Reference.Combustion) * volumetricMolesPerCubicMetre / 1000;

    /// <summary>Gross heating value of the gas taken as ideal, MJ/m³: some tables print it.</summary>
    public double IdealGrossMegajoulesPerCubicMetre => GrossMegajoulesPerCubicMetre * CompressionFactor;

    /// <summary>Net heating value of the gas taken as ideal, MJ/m³.</summary>
    public double IdealNetMegajoulesPerCubicMetre => NetMegajoulesPerCubicMetre * CompressionFactor;

    /// <summary>kg/m³.</summary>
    public double DensityKilogramsPerCubicMetre => Mixture.MolarMass * volumetricMolesPerCubicMetre / 1000;

    /// <summary>Density over that of dry air at the same conditions.</summary>
    public double RelativeDensity => Mixture.MolarMass / GasTable.Iso6976.AirMolarMass * AirCompression / CompressionFactor;

    /// <summary>Gross Wobbe index, MJ/m³: the heat that a given nozzle at a given pressure passes goes with it.</summary>
    public double GrossWobbeMegajoulesPerCubicMetre => GrossMegajoulesPerCubicMetre / Math.Sqrt(RelativeDensity);

    /// <summary>Net Wobbe index, MJ/m³.</summary>
    public double NetWobbeMegajoulesPerCubicMetre => NetMegajoulesPerCubicMetre / Math.Sqrt(RelativeDensity);

    /// <summary>Gross heating value, kWh/m³.</summary>
    public double GrossKilowattHoursPerCubicMetre => EnergyUnits.KilowattHoursPerCubicMetreOfMegajoules(GrossMegajoulesPerCubicMetre);

    /// <summary>Pressure of the volume over 101.325 kPa.</summary>
    internal double PressureRatio { get; }

    /// <summary>Sum of x s.</summary>
    internal double Summation { get; }

    double AirCompression { get; }
}
