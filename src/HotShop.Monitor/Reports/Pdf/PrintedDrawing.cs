using HotShop.Monitor.Reports.Pictures;
using SkiaSharp;

namespace HotShop.Monitor.Reports.Pdf;

/// <summary>Draws a picture onto paper, as vectors. Greys and hatches that also a black-and-white printer keeps apart.</summary>
static class PrintedDrawing
{
    public static readonly SKColor Ink = new(0x19, 0x1c, 0x21), Dim = new(0x47, 0x4d, 0x56), Hair = new(0xa4, 0xa9, 0xb1);

    /// <param name="scale">Points to a unit of the drawing.</param>
    public static void Draw(SKCanvas canvas, Drawing drawing, float x, float y, float scale, PrintFonts fonts)
    {
        canvas.Save();
        canvas.Translate(x, y);
        canvas.Scale(scale);
        foreach (var mark in drawing.Marks) Draw(canvas, mark, fonts);
        canvas.Restore();
    }

    static void Draw(SKCanvas canvas, Mark mark, PrintFonts fonts)
    {
        switch (mark)
        {
            case Mark.Box box when box is { Width: > 0, Height: > 0 }:
                Fill(canvas, Rectangle(box), box.Tone, box.Fill);
                break;
            case Mark.Area area:
                Fill(canvas, Path(area.Edge, isClosed: true), area.Tone, area.Fill);
                break;
            case Mark.Line line:
                using (var pen = Pen(Colour(line.Tone), (float)line.Width))
                using (var path = Path(line.Points, isClosed: false))
                {
                    if (line.IsDashed) pen.PathEffect = SKPathEffect.CreateDash([4, 3], 0);
                    canvas.DrawPath(path, pen);
                }
                break;
            case Mark.Dot dot:
                using (var paint = dot.IsOpen ? Pen(Colour(dot.Tone), 1.5f) : new SKPaint { Color = Colour(dot.Tone), IsAntialias = true })
                    canvas.DrawCircle((float)dot.X, (float)dot.Y, (float)dot.Radius, paint);
                break;
            case Mark.Words words:
                fonts.Draw(canvas, words.Text, (float)words.X, (float)words.Y, (float)words.Size, Colour(words.Tone), words.IsBold,
                    words.Anchor switch { Anchor.End => SKTextAlign.Right, Anchor.Middle => SKTextAlign.Center, _ => SKTextAlign.Left });
                break;
        }
    }

    static void Fill(SKCanvas canvas, SKPath path, Tone tone, Fill fill)
    {
        using (path)
        {
            if (fill == Pictures.Fill.Hatched) Hatch(canvas, path);
            else
            {
                var colour = Colour(tone);
                // The band of an expectation alone is seen through: what it is about lies under it.
                using var paint = new SKPaint { Color = tone == Tone.Band ? colour.WithAlpha(110) : fill == Pictures.Fill.Expected ? Lighter(colour) : colour, IsAntialias = true };
                canvas.DrawPath(path, paint);
            }
        }
    }

    static void Hatch(SKCanvas canvas, SKPath path)
    {
        using var pen = Pen(Dim, 1);
        canvas.Save();
        canvas.ClipPath(path);
        var bounds = path.Bounds;
        for (var at = bounds.Left - bounds.Height; at < bounds.Right; at += 7) canvas.DrawLine(at, bounds.Bottom, at + bounds.Height, bounds.Top, pen);
        canvas.Restore();
    }

    /// <summary>Mixed with the paper, not transparent: printers and fax lines differ in what they make of transparency.</summary>
    static SKColor Lighter(SKColor colour) => new(Half(colour.Red), Half(colour.Green), Half(colour.Blue));

    static byte Half(byte channel) => (byte)(255 - (255 - channel) * 0.42);

    static SKPaint Pen(SKColor colour, float width) => new() { Color = colour, IsAntialias = true, Style = SKPaintStyle.Stroke, StrokeWidth = width, StrokeJoin = SKStrokeJoin.Round };

    static SKPath Rectangle(Mark.Box box) =>
        Path([new(box.X, box.Y), new(box.X + box.Width, box.Y), new(box.X + box.Width, box.Y + box.Height), new(box.X, box.Y + box.Height)], isClosed: true);

    static SKPath Path(IReadOnlyList<Spot> points, bool isClosed)
    {
        using var path = new SKPathBuilder();
        path.AddPoly([.. points.Select(p => new SKPoint((float)p.X, (float)p.Y))], isClosed);
        return path.Detach();
    }

    static SKColor Colour(Tone tone) => tone switch
    {
        Tone.Ink => Ink,
        Tone.Dim => Dim,
        Tone.Faint => new(0x5f, 0x66, 0x6f),
        Tone.Hair => Hair,
        Tone.Ground => SKColors.White,
        Tone.Shade => new(0xec, 0xee, 0xf0),
        Tone.Band => new(0xd4, 0xd7, 0xdb),
        Tone.Holding => new(0x3f, 0x45, 0x4e),
        Tone.Melting => new(0x6f, 0x76, 0x80),
        Tone.GloryHoles => new(0x9d, 0xa3, 0xab),
        Tone.Annealers => new(0xc3, 0xc7, 0xcd),
        Tone.Charges => new(0xe3, 0xe5, 0xe8),
        Tone.Other => new(0xb0, 0xb5, 0xbc),
        _ => new(0xf3, 0xf4, 0xf5),
    };
}
