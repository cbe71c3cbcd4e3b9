using System.Text;

namespace HotShop.Monitor.Wire;

/// <summary>Makes what came from outside fit for a reason that a person reads: short, on one line, without control characters.</summary>
static class Shown
{
    const int Longest = 48;

    public static string Short(string text)
    {
        var shown = new StringBuilder(Longest + 1);
        foreach (var rune in text.EnumerateRunes())
        {
            if (shown.Length >= Longest) return shown.Append('…').ToString();
            // Direction marks would turn the rest of the line round; they are of the same category as other format characters.
            var isPlain = !Rune.IsControl(rune) && Rune.GetUnicodeCategory(rune) is not (System.Globalization.UnicodeCategory.Format
                or System.Globalization.UnicodeCategory.LineSeparator or System.Globalization.UnicodeCategory.ParagraphSeparator);
            shown.Append(isPlain ? rune.ToString() : "·");
        }
        return shown.ToString();
    }
}
