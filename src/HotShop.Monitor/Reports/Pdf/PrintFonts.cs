using SkiaSharp;

namespace HotShop.Monitor.Reports.Pdf;

/// <summary>
/// The fonts of the printed report, from the program itself: on a machine without fonts every word would silently vanish.
/// Roboto Condensed, SIL Open Font License 1.1 (Fonts/OFL.txt). A letter it has not is drawn in a font of the machine that has it.
/// </summary>
sealed class PrintFonts : IDisposable
{
    readonly SKTypeface regular = Load("RobotoCondensed-Regular.ttf"), bold = Load("RobotoCondensed-Bold.ttf");

    public float Width(string text, float size, bool isBold = false) => Runs(text, isBold).Sum(run =>
    {
        using var font = Font(run.Face, size);
        return font.MeasureText(run.Text);
    });

    /// <summary>Draws a line of text; y is its base line.</summary>
    public void Draw(SKCanvas canvas, string text, float x, float y, float size, SKColor colour, bool isBold = false, SKTextAlign align = SKTextAlign.Left)
    {
        if (align != SKTextAlign.Left) x -= Width(text, size, isBold) * (align == SKTextAlign.Right ? 1 : 0.5f);
        using var paint = new SKPaint { Color = colour, IsAntialias = true };
        foreach (var (part, face) in Runs(text, isBold))
        {
            using var font = Font(face, size);
            canvas.DrawText(part, x, y, SKTextAlign.Left, font, paint);
            x += font.MeasureText(part);
        }
    }

    /// <summary>Letters of the text that neither the report's fonts nor the machine's have.</summary>
    public IReadOnlyList<string> Missing(string text) =>
        [.. Runs(text, isBold: false).Where(r => r.Face.GetGlyphs(r.Text).Contains((ushort)0)).Select(r => r.Text)];

    /// <summary>The text cut so that it is no wider; cut text ends with an ellipsis.</summary>
    public string Fit(string text, float size, float width, bool isBold = false)
    {
        if (Width(text, size, isBold) <= width) return text;
        var keep = text.Length;
        while (keep > 1 && Width(text[..keep] + "…", size, isBold) > width) keep--;
        return text[..keep].TrimEnd() + "…";
    }

    /// <summary>The text in lines no wider than given; a word wider than the line stands alone.</summary>
    public IEnumerable<string> Lines(string text, float size, float width)
    {
        var line = "";
        foreach (var word in text.Split(' '))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length == 0 || Width(longer, size) <= width) { line = longer; continue; }
            yield return line;
            line = word;
        }
        if (line.Length > 0) yield return line;
    }

    List<(string Text, SKTypeface Face)> Runs(string text, bool isBold)
    {
        var face = isBold ? bold : regular;
        if (text.Length == 0 || !face.GetGlyphs(text).Contains((ushort)0)) return [(text, face)];
        var runs = new List<(string Text, SKTypeface Face)>();
        foreach (var rune in text.EnumerateRunes())
        {
            var letter = rune.ToString();
            var own = face.GetGlyphs(letter).Contains((ushort)0) ? SKFontManager.Default.MatchCharacter(rune.Value) ?? face : face;
            if (runs.Count > 0 && runs[^1].Face.Handle == own.Handle) runs[^1] = (runs[^1].Text + letter, own);
            else runs.Add((letter, own));
        }
        return runs;
    }

    static SKFont Font(SKTypeface face, float size) => new(face, size) { Subpixel = true, LinearMetrics = true };

    static SKTypeface Load(string file)
    {
        using var stream = typeof(PrintFonts).Assembly.GetManifestResourceStream($"HotShop.Monitor.Reports.Pdf.Fonts.{file}")
            ?? throw new InvalidOperationException($"the program lacks its font {file}");
        return SKTypeface.FromStream(stream) ?? throw new InvalidOperationException($"the program's font {file} cannot be read");
    }

    public void Dispose()
    {
        regular.Dispose();
        bold.Dispose();
    }
}
