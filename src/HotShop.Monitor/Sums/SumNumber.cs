using System.Globalization;

namespace HotShop.Monitor.Sums;

/// <summary>A number as it was typed, with half of its last digit: 7.3 is good to 0.05. Pure.</summary>
/// <param name="HalfStep">Half of the last digit written.</param>
readonly record struct SumNumber(double Value, double HalfStep)
{
    const int LongestDigits = 18;

    /// <param name="decimalMark">Of whoever types: "," or ".".</param>
    /// <returns>The number, or what is wrong with it.</returns>
    public static (SumNumber Number, string? Problem) Read(string text, string decimalMark)
    {
        var plain = string.Concat(text.Where(c => !char.IsWhiteSpace(c) && c is not ('\'' or '’'))).Replace('−', '-');
        var other = decimalMark == "," ? "." : ",";
        // The other country's mark before three digits: 1.150 is eleven hundred to one and one and a bit to another.
        if (plain.Split(other) is [var whole, { Length: 3 } three] && whole.Trim('-').TrimStart('0').Length > 0 && three.All(char.IsAsciiDigit))
            return (default, $"'{Wire.Shown.Short(text)}' can be read in two ways: leave out the mark between thousands, and write {decimalMark} before decimals");
        plain = plain.Replace(',', '.');
        if (plain.Length > LongestDigits || plain.Any(c => !char.IsAsciiDigit(c) && c is not ('-' or '.')) || !double.TryParse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var value))
            return (default, $"'{Wire.Shown.Short(text)}' is no number: write one like 12{decimalMark}5");
        var point = plain.IndexOf('.', StringComparison.Ordinal);
        return (new(value, 0.5 * Math.Pow(10, point < 0 ? 0 : point + 1 - plain.Length)), null);
    }
}
