using System.Globalization;

namespace HotShop.Checks;

/// <summary>A published value and ours: one row of docs/checks.md.</summary>
/// <param name="What">The case, as a person would look it up: "type K at 1000 °C".</param>
/// <param name="Published">The value as printed, in invariant digits.</param>
/// <param name="Unit">UCUM or a plain word; empty for a bare number.</param>
/// <param name="Tolerance">Largest difference allowed, in the unit. Half of the last printed digit wherever the source allows it.</param>
/// <param name="Source">The text, table or example that states it.</param>
/// <param name="Standing">How the value came to us.</param>
/// <param name="Ours">What the library computes; throws only when the library does.</param>
public sealed record Check(string What, string Published, string Unit, double Tolerance, string Source, Standing Standing, Func<double> Ours)
{
    public double Expected { get; } = double.Parse(Published, NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>Within half of the last printed digit; a hair more, because the print itself was rounded from binary as ours is.</summary>
    public static double HalfOfLastDigit(string published)
    {
        var mantissa = published.Split('e', 'E');
        var point = mantissa[0].IndexOf('.', StringComparison.Ordinal);
        var decimals = point < 0 ? 0 : mantissa[0].Length - point - 1;
        var exponent = mantissa.Length > 1 ? int.Parse(mantissa[1], CultureInfo.InvariantCulture) : 0;
        return 0.5000001 * Math.Pow(10, exponent - decimals);
    }

    /// <summary>A check to the last digit printed.</summary>
    public static Check Printed(string what, string published, string unit, string source, Func<double> ours, Standing standing = Standing.Read) =>
        new(what, published, unit, HalfOfLastDigit(published), source, standing, ours);

    public bool Holds => Math.Abs(Ours() - Expected) <= Tolerance;
}
