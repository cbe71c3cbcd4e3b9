namespace HotShop.Physics.FuelGases;

/// <summary>A fuel gas by its composition in mole fractions, with what ISO 6976:2016 says of a mole of it.</summary>
/// <remarks>Range of the standard: natural gas, its substitutes and mixtures of such gases; dry unless water is named. Heating values per mole and per mass are those of the
/// ideal gas, as in the standard.</remarks>
public sealed class GasMixture
{
    readonly Dictionary<GasComponent, double> fractions;

    GasMixture(Dictionary<GasComponent, double> fractions)
    {
        this.fractions = fractions;
        Atoms = fractions.Aggregate(default(Atoms), (sum, part) => sum + part.Value * part.Key.Atoms);
    }

    /// <summary>A pure gas.</summary>
    public static GasMixture Pure(GasComponent component) => new(new() { [component] = 1 });

    /// <summary>A mixture of parts by volume or moles in any measure: they are scaled to add up to 1.</summary>
    /// <exception cref="ArgumentException">Nothing above 0, or a part below it.</exception>
    public static GasMixture OfParts(IEnumerable<KeyValuePair<GasComponent, double>> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        var kept = new Dictionary<GasComponent, double>();
        foreach (var (component, part) in parts)
            if (Require.NotNegative(part) > 0) kept[component] = kept.GetValueOrDefault(component) + part;
        var whole = kept.Values.Sum();
        if (!(whole > 0) || !double.IsFinite(whole)) throw new ArgumentException("a mixture needs a part above 0", nameof(parts));
        return new GasMixture(kept.ToDictionary(p => p.Key, p => p.Value / whole));
    }

    /// <summary>Mole fractions by component; what is not there is left out. They add up to 1.</summary>
    public IReadOnlyDictionary<GasComponent, double> Fractions => fractions;

    /// <summary>Mole fraction of a component, 0 to 1.</summary>
    public double Fraction(GasComponent component) => fractions.GetValueOrDefault(component);

    /// <summary>This gas with another blended in.</summary>
    /// <param name="other">What is added.</param>
    /// <param name="share">Its mole fraction in the blend, 0 to 1.</param>
    public GasMixture With(GasMixture other, double share)
    {
        ArgumentNullException.ThrowIfNull(other);
        Require.Share(share);
        return OfParts(fractions.Select(p => KeyValuePair.Create(p.Key, p.Value * (1 - share))).Concat(other.fractions.Select(p => KeyValuePair.Create(p.Key, p.Value * share))));
    }

    /// <summary>Moles of each element in a mole of gas.</summary>
    public Atoms Atoms { get; }

    /// <summary>Oxygen that burning a mole needs beyond the mixture's own, mol; 0 or below: it needs no air.</summary>
    public double OxygenNeedMoles => Atoms.Carbon + Atoms.Hydrogen / 4 - Atoms.Oxygen / 2;

    /// <summary>Whether it is a fuel: it burns, and needs air for it.</summary>
    public bool NeedsAir => OxygenNeedMoles > 0 && NetKilojoulesPerMole(ReferenceTemperature.Celsius25) > 0;

    /// <summary>kg/kmol.</summary>
    public double MolarMass => Sum(c => c.MolarMass);

    /// <summary>Gross (higher) heating value, kJ/mol.</summary>
    public double GrossKilojoulesPerMole(ReferenceTemperature combustion) => Sum(c => c.GrossKilojoulesPerMole(combustion));

    /// <summary>Net (lower) heating value, kJ/mol: the water of burning leaves as vapour.</summary>
    public double NetKilojoulesPerMole(ReferenceTemperature combustion) =>
        GrossKilojoulesPerMole(combustion) - Atoms.Hydrogen / 2 * GasTable.Iso6976.WaterVaporisationKilojoulesPerMole[combustion.Key()];

    /// <summary>Gross heating value, MJ/kg.</summary>
    public double GrossMegajoulesPerKilogram(ReferenceTemperature combustion) => GrossKilojoulesPerMole(combustion) / MolarMass;

    /// <summary>Net heating value, MJ/kg.</summary>
    public double NetMegajoulesPerKilogram(ReferenceTemperature combustion) => NetKilojoulesPerMole(combustion) / MolarMass;

    /// <summary>Carbon dioxide of burning it, and of what it holds already, in kg per gross kWh (25 °C): every atom of carbon leaves as CO2.</summary>
    /// <exception cref="InvalidOperationException">The mixture does not burn.</exception>
    public double CarbonDioxideKilogramsPerGrossKilowattHour
    {
        get
        {
            var gross = GrossKilojoulesPerMole(ReferenceTemperature.Celsius25);
            if (gross <= 0) throw new InvalidOperationException("a gas that does not burn has no carbon dioxide per kWh");
            return Atoms.Carbon * GasComponent.CarbonDioxide.MolarMass / gross * Energy.EnergyUnits.MegajoulesPerKilowattHour;
        }
    }

    /// <summary>What a cubic metre of it is, at the given reference.</summary>
    public GasProperties At(GasReference reference) => new(this, reference);

    internal double Sum(Func<GasComponent, double> property) => fractions.Sum(p => p.Value * property(p.Key));
}
