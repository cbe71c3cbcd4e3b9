namespace HotShop.Physics.FuelGases;

/// <summary>A pure component of a fuel gas, as ISO 6976:2016 tabulates it.</summary>
public sealed class GasComponent
{
    static readonly Dictionary<string, GasComponent> ByName = GasTable.Iso6976.Components.ToDictionary(c => c.Key, c => new GasComponent(c.Key, c.Value));

    readonly GasRow row;

    GasComponent(string name, GasRow row)
    {
        (Name, this.row) = (name, row);
        Atoms = new Atoms(row.Carbon, row.Hydrogen, row.Oxygen, row.Nitrogen, row.Inert);
    }

    public static GasComponent Methane { get; } = ByName["methane"];
    public static GasComponent Propane { get; } = ByName["propane"];
    public static GasComponent Hydrogen { get; } = ByName["hydrogen"];
    public static GasComponent CarbonDioxide { get; } = ByName["carbon-dioxide"];
    public static GasComponent Nitrogen { get; } = ByName["nitrogen"];
    public static GasComponent Oxygen { get; } = ByName["oxygen"];

    /// <summary>All seventeen.</summary>
    public static IReadOnlyCollection<GasComponent> All => ByName.Values;

    /// <summary>The component of a name such as <c>n-butane</c>; null where there is none.</summary>
    public static GasComponent? Find(string name) => ByName.GetValueOrDefault(name);

    public string Name { get; }

    /// <summary>kg/kmol.</summary>
    public double MolarMass => row.MolarMass;

    /// <summary>Atoms of a molecule.</summary>
    public Atoms Atoms { get; }

    /// <summary>Standard uncertainty of the molar gross heating value, kJ/mol.</summary>
    public double GrossUncertaintyKilojoulesPerMole => row.UGross;

    /// <summary>Standard uncertainty of the summation factor.</summary>
    public double SummationUncertainty => row.USummation;

    /// <summary>Gross (higher) heating value of the ideal gas, kJ/mol; 0 for what does not burn. Water vapour has the heat of its condensing.</summary>
    public double GrossKilojoulesPerMole(ReferenceTemperature combustion) => row.GrossKilojoulesPerMole?[combustion.Key()] ?? 0;

    /// <summary>Summation factor s: 1 - Z is the square of the mixture's sum of x s at 101.325 kPa.</summary>
    /// <param name="volume">Not 25 °C.</param>
    public double Summation(ReferenceTemperature volume) => row.Summation[volume.Key()];

    public override string ToString() => Name;
}
