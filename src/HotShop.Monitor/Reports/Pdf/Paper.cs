using SkiaSharp;

namespace HotShop.Monitor.Reports.Pdf;

/// <summary>A size of paper in points of 1/72 inch.</summary>
sealed record Paper(string Name, float Width, float Height)
{
    /// <summary>ISO 216: 210 x 297 mm.</summary>
    public static readonly Paper A4 = new("A4", 210 / 25.4f * 72, 297 / 25.4f * 72);

    /// <summary>ANSI A: 8.5 x 11 inches.</summary>
    public static readonly Paper Letter = new("Letter", 8.5f * 72, 11 * 72);

    /// <summary>A PDF of these pages. What is drawn stays vector and text.</summary>
    /// <param name="madeAt">Written into the file; the same pages at the same time give the same file.</param>
    public byte[] Print(string title, DateTimeOffset madeAt, IReadOnlyList<Action<SKCanvas>> pages)
    {
        using var bytes = new MemoryStream();
        using (var document = SKDocument.CreatePdf(bytes, new SKDocumentPdfMetadata { Title = title, Creator = "HotShop.Monitor", Creation = madeAt.UtcDateTime, Modified = madeAt.UtcDateTime }))
        {
            foreach (var draw in pages)
            {
                draw(document.BeginPage(Width, Height));
                document.EndPage();
            }
            document.Close();
        }
        return bytes.ToArray();
    }

    /// <summary>The same page as a PNG, for looking at it without a reader of PDF.</summary>
    /// <param name="dotsPerPoint">2 is 144 dots an inch.</param>
    public byte[] Picture(Action<SKCanvas> page, float dotsPerPoint)
    {
        using var surface = SKSurface.Create(new SKImageInfo((int)(Width * dotsPerPoint), (int)(Height * dotsPerPoint)));
        surface.Canvas.Clear(SKColors.White);
        surface.Canvas.Scale(dotsPerPoint);
        page(surface.Canvas);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
