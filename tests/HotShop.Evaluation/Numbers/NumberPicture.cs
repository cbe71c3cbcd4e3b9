using HotShop.Monitor.Reports.Pdf;
using HotShop.Monitor.Reports.Pictures;
using SkiaSharp;

namespace HotShop.Evaluation.Numbers;

/// <summary>A picture of docs/numbers.md.</summary>
sealed record NumberPicture(string Name, Func<Drawing> Draw)
{
    /// <summary>Dots to a unit of the drawing: sharp on a page, small in the repository.</summary>
    const float Scale = 1.2f;

    public static IReadOnlyList<NumberPicture> All { get; } =
    [
        new("couples", CouplePictures.Voltages), new("wrong-type", CouplePictures.WrongType), new("hydrogen", GasPictures.Hydrogen), new("available-heat", GasPictures.AvailableHeat),
        new("viscosity", GlassPictures.Viscosity), new("wall", WallPicture.Draw), new("doubt", DoubtPicture.Draw),
        new("cumulative", StatisticsPictures.Cumulative), new("level", StatisticsPictures.Nile),
    ];

    public string File => $"docs/pictures/numbers-{Name}.png";

    public byte[] Png()
    {
        var drawing = Draw();
        using var fonts = new PrintFonts();
        using var surface = SKSurface.Create(new SKImageInfo((int)(drawing.Width * Scale), (int)(drawing.Height * Scale)));
        PrintedDrawing.Draw(surface.Canvas, drawing, 0, 0, Scale, fonts);
        using var image = surface.Snapshot();
        using var data = image.Encode(SKEncodedImageFormat.Png, 100);
        return data.ToArray();
    }
}
