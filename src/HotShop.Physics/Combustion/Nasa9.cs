namespace HotShop.Physics.Combustion;

/// <summary>Enthalpy of an ideal gas by NASA's polynomials of nine coefficients.</summary>
/// <remarks>Source: McBride, Zehe and Gordon, NASA/TP-2002-211556. Range here 200 to 2500 K, in which the values are checked.</remarks>
public sealed class Nasa9
{
    /// <summary>Temperature of which the enthalpies of formation are told, K.</summary>
    public const double ReferenceKelvin = 298.15;

    const double SeamKelvin = 1000, LeastKelvin = 200, MostKelvin = 2500;

    static readonly Nasa9Table Table = EmbeddedJson.Read<Nasa9Table>("Combustion.nasa9.json");

    readonly Nasa9Row row;

    Nasa9(string formula) => row = Table.Species[formula];

    public static Nasa9 CarbonDioxide { get; } = new("CO2");
    public static Nasa9 WaterVapour { get; } = new("H2O");
    public static Nasa9 Nitrogen { get; } = new("N2");
    public static Nasa9 Oxygen { get; } = new("O2");
    public static Nasa9 Methane { get; } = new("CH4");
    public static Nasa9 Ethane { get; } = new("C2H6");
    public static Nasa9 Propane { get; } = new("C3H8");

    /// <summary>Enthalpy of formation at 298.15 K, kJ/mol.</summary>
    public double FormationKilojoulesPerMole => AbsoluteKilojoulesPerMole(ReferenceKelvin);

    /// <summary>Heat that brings a mole from 298.15 K to a temperature, kJ/mol; negative below.</summary>
    /// <param name="kelvin">200 to 2500 K.</param>
    public double KilojoulesPerMoleAbove298(double kelvin) =>
        kelvin is >= LeastKelvin and <= MostKelvin
            ? AbsoluteKilojoulesPerMole(kelvin) - FormationKilojoulesPerMole
            : throw new ArgumentOutOfRangeException(nameof(kelvin), kelvin, "expected 200 to 2500 K");

    double AbsoluteKilojoulesPerMole(double kelvin) => AbsoluteKilojoulesPerMole(kelvin < SeamKelvin ? row.Low : row.High, kelvin);

    static double AbsoluteKilojoulesPerMole(double[] a, double t)
    {
        // H/R in K: the powers of T integrated from those of the heat capacity.
        var enthalpy = -a[0] / t + a[1] * Math.Log(t) + a[7] + t * Polynomial.At([a[2], a[3] / 2, a[4] / 3, a[5] / 4, a[6] / 5], t);
        return enthalpy * PhysicalConstants.GasConstant / 1000;
    }

    /// <summary>How far the two ranges are apart where they meet, kJ/mol.</summary>
    internal double SeamGapKilojoulesPerMole => AbsoluteKilojoulesPerMole(row.High, SeamKelvin) - AbsoluteKilojoulesPerMole(row.Low, SeamKelvin);
}

internal sealed record Nasa9Table(string Source, string Licence, Dictionary<string, Nasa9Row> Species);

internal sealed record Nasa9Row(double[] Low, double[] High);
