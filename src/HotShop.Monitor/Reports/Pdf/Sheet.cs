using HotShop.Monitor.Reports.Pictures;
using SkiaSharp;

namespace HotShop.Monitor.Reports.Pdf;

/// <summary>A column of a printed table.</summary>
/// <param name="Width">Points; the first column takes what the others leave.</param>
readonly record struct SheetColumn(string Title, float Width);

/// <summary>Where the next line goes on a part of a page: words, tables and pictures one below the other.</summary>
sealed class Sheet(SKCanvas canvas, PrintFonts fonts, float left, float top, float width)
{
    const float Small = 8.5f, Body = 9.5f;

    public float Y { get; set; } = top;

    public float Left => left;

    public float Width => width;

    public void Space(float points) => Y += points;

    /// <summary>A paragraph, broken into lines.</summary>
    public void Words(string text, float size = Body, SKColor? colour = null, bool isBold = false)
    {
        foreach (var line in fonts.Lines(text, isBold ? size * 1.04f : size, width))
        {
            Y += size * 1.28f;
            fonts.Draw(canvas, line, left, Y, size, colour ?? PrintedDrawing.Ink, isBold);
        }
        Y += size * 0.3f;
    }

    public void Note(string text) => Words(text, Small, PrintedDrawing.Dim);

    public void Title(string text)
    {
        Space(8);
        Words(text, 11, isBold: true);
    }

    public void Picture(Drawing drawing)
    {
        var scale = width / (float)drawing.Width;
        PrintedDrawing.Draw(canvas, drawing, left, Y + 4, scale, fonts);
        Y += (float)drawing.Height * scale + 8;
    }

    /// <summary>A table: the first column to the left, the others to the right. Text that does not fit its column is cut with an ellipsis, numbers never are.</summary>
    /// <param name="sum">The last row stands out.</param>
    public void Table(IReadOnlyList<SheetColumn> columns, IEnumerable<IReadOnlyList<string>> rows, bool sum = false, float size = Small)
    {
        var first = width - columns.Skip(1).Sum(c => c.Width);
        var line = size * 1.46f;
        Row([.. columns.Select(c => c.Title)], isHead: true, isSum: false);
        var all = rows.ToList();
        for (var i = 0; i < all.Count; i++) Row(all[i], isHead: false, isSum: sum && i == all.Count - 1);
        Y += 3;

        void Row(IReadOnlyList<string> cells, bool isHead, bool isSum)
        {
            using var pen = new SKPaint { Color = isSum ? PrintedDrawing.Dim : PrintedDrawing.Hair, StrokeWidth = isSum ? 1 : 0.5f, IsAntialias = true };
            if (!isHead) canvas.DrawLine(left, Y + 1.5f, left + width, Y + 1.5f, pen);
            Y += line;
            var colour = isHead ? PrintedDrawing.Dim : PrintedDrawing.Ink;
            fonts.Draw(canvas, fonts.Fit(cells[0], size, first - 4, isSum), left, Y - size * 0.22f, size, colour, isSum);
            var right = left + first;
            for (var i = 1; i < cells.Count; i++)
            {
                right += columns[i].Width;
                fonts.Draw(canvas, cells[i], right, Y - size * 0.22f, size, colour, isSum, SKTextAlign.Right);
            }
        }
    }
}
