namespace HotShop.Simulator.Plant;

/// <summary>
/// Heat content of the studio's real glass: the textbook's curve times a hidden factor, as a table of straight pieces of 5 K,
/// so that content to temperature and back are exact inverses and no heat is lost in the conversion.
/// </summary>
internal sealed class GlassEnthalpy
{
    const double PieceKelvin = 5, TopCelsius = 1500;

    /// <summary>Window glass after Sharp and Ginther, J. Am. Ceram. Soc. 34 (1951) 260 (coefficients from memory): mean specific heat
    /// from 0 °C to t is (a t + c) / (0.00146 t + 1) cal/(g K).</summary>
    const double A = 0.0005144, C = 0.175842, Bend = 0.00146, JoulesPerCalorie = 4.184;

    /// <summary>
    /// Mean specific heat of the carbon dioxide in batch, bound or leaving, in kJ/(kg·K) (from memory; about 1.1 from 0 to 900 °C).
    /// </summary>
    public const double GasKilojoulesPerKilogramKelvin = 1.1;

    readonly double[] contents;

    public GlassEnthalpy(double factor) =>
        contents = [.. Enumerable.Range(0, (int)(TopCelsius / PieceKelvin) + 1).Select(i => factor * Textbook(i * PieceKelvin))];

    /// <summary>Heat above 0 °C, in kJ/kg; the last piece is continued beyond 1500 °C.</summary>
    public double KilojoulesPerKilogram(double celsius)
    {
        var piece = Math.Clamp((int)(celsius / PieceKelvin), 0, contents.Length - 2);
        return contents[piece] + (celsius - piece * PieceKelvin) * Slope(piece);
    }

    public double Celsius(double kilojoulesPerKilogram) => Celsius(kilojoulesPerKilogram, glassKilograms: 1, gasKilograms: 0);

    /// <summary>Temperature of glass and bound gas that hold so much heat together, in °C.</summary>
    public double Celsius(double kilojoules, double glassKilograms, double gasKilograms)
    {
        var gasPerKelvin = gasKilograms * GasKilojoulesPerKilogramKelvin;
        var (low, high) = (0, contents.Length - 2);
        while (low < high)
        {
            var middle = (low + high + 1) / 2;
            if (glassKilograms * contents[middle] + gasPerKelvin * middle * PieceKelvin <= kilojoules) low = middle;
            else high = middle - 1;
        }

        var start = low * PieceKelvin;
        return start + (kilojoules - glassKilograms * contents[low] - gasPerKelvin * start) / (glassKilograms * Slope(low) + gasPerKelvin);
    }

    static double Textbook(double celsius) => JoulesPerCalorie * (A * celsius + C) / (Bend * celsius + 1) * celsius;

    double Slope(int piece) => (contents[piece + 1] - contents[piece]) / PieceKelvin;
}
