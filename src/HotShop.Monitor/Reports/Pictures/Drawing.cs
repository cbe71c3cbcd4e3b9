namespace HotShop.Monitor.Reports.Pictures;

/// <summary>What a colour means; the page and the printed report each give it their own, and neither lets colour stand alone.</summary>
enum Tone { Ink, Dim, Faint, Hair, Ground, Shade, Band, Holding, Melting, GloryHoles, Annealers, Other, Unexplained, Charges }

/// <summary>Expected is lighter; hatched means that nothing was measured, as everywhere.</summary>
enum Fill { Solid, Expected, Hatched }

enum Anchor { Start, Middle, End }

readonly record struct Spot(double X, double Y);

/// <summary>One mark of a drawing, in the drawing's own units, y downwards.</summary>
abstract record Mark
{
    public sealed record Box(double X, double Y, double Width, double Height, Tone Tone, Fill Fill = Fill.Solid) : Mark;

    public sealed record Area(IReadOnlyList<Spot> Edge, Tone Tone, Fill Fill = Fill.Solid) : Mark;

    public sealed record Line(IReadOnlyList<Spot> Points, Tone Tone, double Width, bool IsDashed = false) : Mark;

    public sealed record Dot(double X, double Y, double Radius, Tone Tone, bool IsOpen = false) : Mark;

    /// <param name="Y">Of the base line.</param>
    /// <param name="Size">Height of the letters, in units of the drawing.</param>
    public sealed record Words(double X, double Y, string Text, double Size, Tone Tone = Tone.Ink, Anchor Anchor = Anchor.Start, bool IsBold = false) : Mark;
}

/// <summary>A picture as a list of marks. The page writes it as SVG, the report draws it into the PDF: one picture, the same numbers.</summary>
/// <param name="Title">Says in a sentence what it shows; read aloud in its place.</param>
sealed record Drawing(double Width, double Height, string Title, IReadOnlyList<Mark> Marks);
