namespace HotShop.Monitor.Web.Pages.Bills;

/// <summary>A number as people copy it off a bill, with their country's marks: 1.843,20 or 1,843.20. Pure.</summary>
internal static class TypedNumber
{
    /// <param name="decimalMark">Of the studio's country: "," or ".".</param>
    /// <returns>
    /// The same with a point before the decimals and nothing between thousands. What is no such number is left as it was typed: whoever reads it says what is wrong.
    /// </returns>
    public static string? Plain(string? typed, string decimalMark)
    {
        if (string.IsNullOrWhiteSpace(typed)) return null;
        var text = string.Concat(typed.Where(c => !char.IsWhiteSpace(c) && c is not ('\'' or '’')));
        var group = decimalMark == "," ? "." : ",";
        var parts = text.Split(decimalMark);
        if (parts.Length > 2) return typed.Trim();
        // The other country's mark: between thousands it stands before three digits each time; else it can only be a decimal point.
        if (parts.Length == 1 && text.Split(group) is [_, { Length: not 3 } tail] && tail.All(char.IsAsciiDigit)) return text.Replace(group, ".", StringComparison.Ordinal);
        var whole = parts[0].Split(group);
        if (whole.Skip(1).Any(g => g.Length != 3) || (whole.Length > 1 && whole[0].TrimStart('-').Length is 0 or > 3)) return typed.Trim();
        return string.Concat(whole) + (parts.Length == 2 ? "." + parts[1] : "");
    }
}
