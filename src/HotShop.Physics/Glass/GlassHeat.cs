namespace HotShop.Physics.Glass;

/// <summary>Heat content of a glass from its composition: what it takes to warm and melt it as cullet.</summary>
/// <remarks>
/// Mean specific heat from 0 °C to t: (a t + c) / (0.00146 t + 1) cal/(g K), a and c from the oxides. Source: Sharp and Ginther,
/// J. Am. Ceram. Soc. 34 (1951) 260; the oxides' coefficients are from memory. Carry ± 3 %. Oxides that the formula does not know
/// count as the rest of the glass does, up to 5 % by weight.
/// </remarks>
public sealed class GlassHeat
{
    /// <summary>Thermochemical calorie, J; exact.</summary>
    const double JoulesPerCalorie = 4.184;

    /// <summary>Weight % of oxides unknown to the formula that it lets pass: they change the heat by less than its ± 3 %.</summary>
    const double MostUnknownWeightPercent = 5;

    const double LeastCelsius = 0, MostCelsius = 1500;

    static readonly Lazy<HeatTable> Table = new(() => EmbeddedJson.Read<HeatTable>("Glass.heat-sharp-ginther-1951.json"));

    readonly double slope, start, bend;

    /// <param name="glass">At most 5 % by weight of oxides other than those of silicon, aluminium, calcium, magnesium, sodium,
    /// potassium, boron and lead.</param>
    public GlassHeat(GlassComposition glass)
    {
        ArgumentNullException.ThrowIfNull(glass);
        var (oxides, table) = (Table.Value.StartCaloriesPerGramKelvin.Keys, Table.Value);
        if (!Knows(glass)) throw new ArgumentException("more than 5 % of the glass are oxides without coefficients", nameof(glass));
        var known = glass.Only(oxides).WeightPercent;
        (slope, start) = (Mean(table.SlopeCaloriesPerGramKelvinCelsius, known), Mean(table.StartCaloriesPerGramKelvin, known));
        bend = table.BendPerCelsius;
    }

    /// <summary>Whether the formula speaks of this glass.</summary>
    public static bool Knows(GlassComposition glass) => glass.WeightPercentBeside(Table.Value.StartCaloriesPerGramKelvin.Keys) <= MostUnknownWeightPercent;

    /// <summary>Heat needed to bring glass from 0 °C to a temperature, kJ/kg.</summary>
    /// <param name="celsius">0 to 1500 °C.</param>
    public double ContentKilojoulesPerKilogram(double celsius) => MeanKilojoulesPerKilogramKelvin(celsius) * celsius;

    /// <summary>Mean specific heat between 0 °C and a temperature, kJ/(kg K).</summary>
    /// <param name="celsius">0 to 1500 °C.</param>
    public double MeanKilojoulesPerKilogramKelvin(double celsius) => JoulesPerCalorie * (slope * Within(celsius) + start) / (bend * celsius + 1);

    /// <summary>Specific heat at a temperature, kJ/(kg K): the slope of the heat content.</summary>
    /// <param name="celsius">0 to 1500 °C.</param>
    public double SpecificKilojoulesPerKilogramKelvin(double celsius)
    {
        var below = bend * Within(celsius) + 1;
        return JoulesPerCalorie * ((2 * slope * celsius + start) * below - bend * (slope * celsius + start) * celsius) / (below * below);
    }

    /// <summary>Temperature of glass with a heat content, °C; the inverse of <see cref="ContentKilojoulesPerKilogram"/>.</summary>
    public double CelsiusAtContent(double kilojoulesPerKilogram)
    {
        // slope t² + (start − h bend) t − h = 0 with h in cal/g; the positive root.
        var h = Require.NotNegative(kilojoulesPerKilogram) / JoulesPerCalorie;
        var b = start - h * bend;
        return (-b + Math.Sqrt(b * b + 4 * slope * h)) / (2 * slope);
    }

    /// <summary>Heat to bring glass from one temperature to another, kJ/kg; below zero for cooling.</summary>
    public double BetweenKilojoulesPerKilogram(double fromCelsius, double toCelsius) =>
        ContentKilojoulesPerKilogram(toCelsius) - ContentKilojoulesPerKilogram(fromCelsius);

    static double Mean(Dictionary<Oxide, double> coefficients, IReadOnlyDictionary<Oxide, double> weightPercent) =>
        weightPercent.Sum(w => w.Value * coefficients[w.Key]) / weightPercent.Values.Sum();

    static double Within(double celsius) =>
        celsius is >= LeastCelsius and <= MostCelsius ? celsius : throw new ArgumentOutOfRangeException(nameof(celsius), celsius, "expected 0 to 1500 °C");
}

/// <summary>The stored coefficients, by oxide.</summary>
internal sealed record HeatTable(
    string Source, string Licence, double BendPerCelsius, Dictionary<Oxide, double> SlopeCaloriesPerGramKelvinCelsius, Dictionary<Oxide, double> StartCaloriesPerGramKelvin);
