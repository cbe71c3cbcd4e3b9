namespace HotShop.Simulator.Plant;

/// <summary>
/// Share of the gross heat of natural gas (taken as methane) that stays in the chamber when the flue gas leaves at a temperature.
/// </summary>
/// <remarks>
/// Enthalpies above 298.15 K in kJ/mol at 500, 1000, 1500 and 2000 K from the polynomials of McBride, Zehe and Gordon, NASA/TP-2002-211556;
/// gross and net heat of methane 890.58 and 802.57 kJ/mol (ISO 6976). No dissociation.
/// </remarks>
internal sealed class AvailableHeat
{
    const double GrossKilojoulesPerMole = 890.58, NetKilojoulesPerMole = 802.57, NitrogenPerOxygen = 0.79054 / 0.20946;
    const double PieceKelvin = 10, TopCelsius = 1700;

    static readonly double[] Kelvins = [298.15, 500, 1000, 1500, 2000];
    static readonly double[] CarbonDioxide = [0, 8.307, 33.400, 61.709, 91.437];
    static readonly double[] Water = [0, 6.925, 26.003, 48.206, 73.043];
    static readonly double[] Nitrogen = [0, 5.911, 21.462, 38.404, 56.136];
    static readonly double[] Oxygen = [0, 6.085, 22.707, 40.613, 59.201];

    readonly double[] fractions;

    public AvailableHeat(double excessAirFraction) =>
        fractions = [.. Enumerable.Range(0, (int)(TopCelsius / PieceKelvin) + 1).Select(i => Exact(i * PieceKelvin + 273.15, excessAirFraction))];

    /// <summary>Share of the gross heat, 0 to about 0.9.</summary>
    /// <param name="flueCelsius">0 to 1700 °C; beyond counts as the end.</param>
    public double FractionOfGross(double flueCelsius)
    {
        var position = Math.Clamp(flueCelsius / PieceKelvin, 0, fractions.Length - 1.000001);
        var piece = (int)position;
        return fractions[piece] + (position - piece) * (fractions[piece + 1] - fractions[piece]);
    }

    static double Exact(double kelvin, double excess)
    {
        var oxygen = 2 * (1 + excess);
        var flue = At(CarbonDioxide, kelvin) + 2 * At(Water, kelvin) + oxygen * NitrogenPerOxygen * At(Nitrogen, kelvin) + 2 * excess * At(Oxygen, kelvin);
        return (NetKilojoulesPerMole - flue) / GrossKilojoulesPerMole;
    }

    /// <summary>Lagrange's polynomial through the five points.</summary>
    static double At(double[] enthalpies, double kelvin)
    {
        var sum = 0.0;
        for (var i = 0; i < Kelvins.Length; i++)
        {
            var term = enthalpies[i];
            for (var j = 0; j < Kelvins.Length; j++)
                if (j != i) term *= (kelvin - Kelvins[j]) / (Kelvins[i] - Kelvins[j]);
            sum += term;
        }

        return sum;
    }
}
