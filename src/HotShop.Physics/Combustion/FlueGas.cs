using HotShop.Physics.FuelGases;

namespace HotShop.Physics.Combustion;

/// <summary>What leaves when a mole of fuel gas has burnt completely in dry air: moles of each gas. No soot, no carbon monoxide, no dissociation.</summary>
public sealed record FlueGas
{
    FlueGas(Atoms fuel, double oxygenNeed, double excessAir)
    {
        ExcessAir = excessAir;
        OxygenNeedMoles = oxygenNeed;
        CarbonDioxideMoles = fuel.Carbon;
        WaterMoles = fuel.Hydrogen / 2;
        OxygenMoles = excessAir * oxygenNeed;
        NitrogenMoles = fuel.Nitrogen / 2 + (1 + excessAir) * oxygenNeed * DryAir.NitrogenPerOxygen;
        InertMoles = fuel.Inert;
    }

    /// <summary>The flue gas of a fuel.</summary>
    /// <param name="fuel">Burns, by itself or with what it holds.</param>
    /// <param name="excessAir">Air above what burning needs, as a fraction, 0 or above. Less air than needed is not covered.</param>
    /// <exception cref="ArgumentException">The mixture needs no air to burn.</exception>
    public static FlueGas Of(GasMixture fuel, double excessAir)
    {
        ArgumentNullException.ThrowIfNull(fuel);
        return fuel.NeedsAir ? new FlueGas(fuel.Atoms, fuel.OxygenNeedMoles, Require.NotNegative(excessAir)) : throw new ArgumentException("the mixture needs no air to burn", nameof(fuel));
    }

    /// <summary>Air above what burning needs, as a fraction.</summary>
    public double ExcessAir { get; }

    /// <summary>Oxygen that burning needs, mol.</summary>
    public double OxygenNeedMoles { get; }

    /// <summary>Air that burning needs, mol, or m³ for a m³ of gas.</summary>
    public double AirNeedMoles => OxygenNeedMoles / DryAir.OxygenFraction;

    /// <summary>Air that was given, mol.</summary>
    public double AirMoles => (1 + ExcessAir) * AirNeedMoles;

    public double CarbonDioxideMoles { get; }
    public double WaterMoles { get; }
    public double OxygenMoles { get; }
    public double NitrogenMoles { get; }

    /// <summary>Argon and helium of the fuel.</summary>
    public double InertMoles { get; }

    /// <summary>All but the water.</summary>
    public double DryMoles => CarbonDioxideMoles + OxygenMoles + NitrogenMoles + InertMoles;

    public double WetMoles => DryMoles + WaterMoles;

    /// <summary>Oxygen as an analyser shows it that dries its sample, a fraction.</summary>
    public double DryOxygenFraction => OxygenMoles / DryMoles;

    /// <summary>Oxygen as a probe in the hot flue shows it, a fraction.</summary>
    public double WetOxygenFraction => OxygenMoles / WetMoles;

    /// <summary>Carbon dioxide in the dried gas, a fraction; most where there is no excess of air.</summary>
    public double DryCarbonDioxideFraction => CarbonDioxideMoles / DryMoles;

    /// <summary>Water in the wet gas, a fraction.</summary>
    public double WaterFraction => WaterMoles / WetMoles;
}
