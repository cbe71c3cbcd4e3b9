namespace HotShop.Monitor.Money;

/// <summary>Shares a whole amount out in whole smallest units, so that the parts make the total to the last of them.</summary>
static class LargestRemainder
{
    /// <summary>
    /// Each part is its exact value rounded down, and the units left over go to those that lost most; among equals the earlier.
    /// Parts differ from their exact values by less than one unit where the total is the exact sum rounded.
    /// </summary>
    /// <param name="exact">Exact values, in the currency.</param>
    /// <param name="total">Whole in the smallest unit.</param>
    /// <param name="digits">Digits after the point of the smallest unit.</param>
    public static decimal[] Share(IReadOnlyList<decimal> exact, decimal total, int digits)
    {
        if (exact.Count == 0) return total == 0 ? [] : throw new ArgumentException("nothing to share the amount among", nameof(exact));
        var unit = Unit(digits);
        var parts = exact.Select(e => Math.Floor(e / unit) * unit).ToArray();
        var left = (int)((total - parts.Sum()) / unit);
        var order = Enumerable.Range(0, parts.Length).OrderByDescending(i => exact[i] - parts[i]).ThenBy(i => i).ToArray();
        // More (or fewer) units than parts are left over only where the total is not the sum: then all take their turn again.
        for (var i = 0; left > 0; left--, i++) parts[order[i % parts.Length]] += unit;
        for (var i = parts.Length - 1; left < 0; left++, i = i == 0 ? parts.Length - 1 : i - 1) parts[order[i]] -= unit;
        return parts;
    }

    /// <summary>The one rounding of a bill: half a unit goes away from zero, as on bills (common practice).</summary>
    public static decimal Round(decimal exact, int digits) =>
        // Thirds of a month's charge leave a dust of 1e-27 that must not decide.
        Math.Round(Math.Round(exact, 12, MidpointRounding.ToEven), digits, MidpointRounding.AwayFromZero);

    static decimal Unit(int digits) => digits switch { 0 => 1m, 1 => 0.1m, 2 => 0.01m, 3 => 0.001m, _ => 0.0001m };
}
