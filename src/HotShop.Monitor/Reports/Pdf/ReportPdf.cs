using HotShop.Monitor.Money;
using HotShop.Monitor.Reports.Pictures;
using NodaTime;
using SkiaSharp;

namespace HotShop.Monitor.Reports.Pdf;

/// <summary>
/// The owner's report on two pages of paper: the words, figures and pictures of the page, made from the same account. What a list has too much of for the paper is counted
/// and left to the spreadsheet.
/// </summary>
sealed class ReportPdf(Account account, StudioFormat format)
{
    const float Margin = 40, Gap = 24;

    readonly AccountStory story = new(account, format);
    readonly CostStrip strip = new AccountStrip(account, format).Make();
    readonly IReadOnlyList<WhereRow> where = WhereRow.Of(account.Where, format);

    public const string MediaType = "application/pdf";

    public Paper Paper => format.IsLetterPaper ? Paper.Letter : Paper.A4;

    public string Title => $"{account.Span.Studio}: {account.Span.Title}";

    /// <summary>A name for the file that sorts by time and needs no quoting: hotshop-2026-10.pdf.</summary>
    public static string FileName(AccountSpan span) => span.Kind switch
    {
        SpanKind.Month => $"hotshop-{span.First:uuuu-MM}.pdf",
        SpanKind.Year => $"hotshop-{span.First:uuuu}.pdf",
        _ => $"hotshop-{span.First:uuuu-MM-dd}-to-{span.Last:uuuu-MM-dd}.pdf",
    };

    public byte[] Write(Instant madeAt)
    {
        using var fonts = new PrintFonts();
        return Paper.Print(Title, madeAt.ToDateTimeOffset(), [canvas => First(canvas, fonts), canvas => Second(canvas, fonts)]);
    }

    /// <summary>Both pages as PNG.</summary>
    public IReadOnlyList<byte[]> Pictures(float dotsPerPoint)
    {
        using var fonts = new PrintFonts();
        return [Paper.Picture(canvas => First(canvas, fonts), dotsPerPoint), Paper.Picture(canvas => Second(canvas, fonts), dotsPerPoint)];
    }

    void First(SKCanvas canvas, PrintFonts fonts)
    {
        var page = Frame(canvas, fonts, 1);
        page.Words(story.Headline + ".", 17.5f);
        foreach (var sentence in story.Lede) page.Words(sentence, 10, PrintedDrawing.Dim);
        foreach (var gap in story.Gaps.Take(3)) page.Words(gap, isBold: true);
        if (story.IsEmpty) return;
        page.Picture(StripAcross.Draw(strip, page.Width, 225, 8.2));
        page.Note(story.HowSure is { } sure ? $"{story.Measured} {sure}." : story.Measured);
        var (left, right) = Halves(canvas, fonts, page, page.Width * 0.44f);
        left.Title(story.WhereTitle);
        left.Picture(SplitPipe.Draw([.. where.Select(r => new SplitPipe.Branch(r.Tone, r.Title, r.Amount?.Text ?? r.EnergyKwh.Text, r.Amount?.Value ?? (account.Cost is null ? (decimal)r.EnergyKwh.Value : 0)))],
            amount => account.Cost is null ? format.Energy((double)amount) : format.Amount(amount), "", left.Width, 9));
        right.Title("By appliance and purpose");
        right.Table([new("What", 0), new("Cost", 62), new("Share", 40), new("Energy", 68)], Cut(where.Select(WhereCells), 14));
        right.Note(where.Any(r => r.IsEstimated) ? "Rows with ≈ are estimated, in whole or in part, from nameplates and on-time." : story.Marks);
        page.Y = Math.Max(left.Y, right.Y);
        if (account.Comparisons.Count == 0) return;
        page.Title("Against earlier");
        page.Table([new("The same days of", 0), new("Cost", 80), new("Difference", 80), new("Energy", 90), new("Measured", 60)],
            account.Comparisons.Select(c => (IReadOnlyList<string>)[c.Against, c.Cost?.Text ?? "", c.Difference?.Text ?? "", c.EnergyKwh.Text, c.MeasuredShare.Text]));
    }

    static IReadOnlyList<string> WhereCells(WhereRow row) =>
        [row.IsEstimated ? $"≈ {row.Title}" : row.Title, row.Amount?.Text ?? "", row.Share.Text, row.Tone == Tone.Charges ? "" : row.EnergyKwh.Text];

    void Second(SKCanvas canvas, PrintFonts fonts)
    {
        var page = Frame(canvas, fonts, 2);
        if (story.IsEmpty) return;
        var (left, right) = Halves(canvas, fonts, page, page.Width * 0.52f);
        Steps(left);
        left.Title("As a bill would have it");
        left.Table([new("Line", 0), new("Amount", 66)], Cut(account.Lines.Select(l => (IReadOnlyList<string>)[$"{AccountStory.Energy(l.Kind)}, {l.Name}: {l.Calculation}", l.Amount.Text]), 12)
            .Concat(account.Cost is { } total ? [["Total", total.Text]] : []), sum: account.Cost is not null, size: 8);
        right.Title(story.KilogramTitle);
        if (account.Curve is { } curve) right.Picture(KilogramPicture.Draw(curve, format, right.Width, 8.2));
        foreach (var sentence in story.Kilogram) right.Note(sentence);
        PerUnit(right);
        right.Title("Prices in force");
        if (account.Prices.Count == 0) right.Note("None: what was used is shown as energy.");
        Some(right, story.Prices, 8);
        Some(right, [.. account.Bills.Select(story.Bill)], 4, "Bills against the meters");
        right.Title(story.CarbonTitle);
        right.Note($"Between {account.CarbonDioxide.Kilograms.IntervalText}.");
        foreach (var source in account.CarbonDioxide.Sources) right.Note(source.Text);
    }

    /// <summary>The table behind the strip.</summary>
    void Steps(Sheet sheet)
    {
        if (account.Span.Kind == SpanKind.Year)
        {
            sheet.Title("Month by month");
            sheet.Table([new("Month", 0), new("Cost", 70), new("Energy", 76), new("Measured", 50)],
                account.Months.Select(m => (IReadOnlyList<string>)[m.Label, m.Amount?.Text ?? "", m.EnergyKwh.Text, m.MeasuredShare.Text]));
            return;
        }
        sheet.Title("Day by day");
        sheet.Table([new("Day", 0), new("Cost", 58), new("Energy", 68), new("Measured", 46)],
            Cut(account.Days.Select((d, i) => (IReadOnlyList<string>)[strip.Steps[i].Change is { } change ? $"{d.Label}, {change}" : strip.Steps[i].Note is { } note ? $"{d.Label}, {note}" : d.IsUnderWay ? $"{d.Label}, so far" : d.Label,
                d.Amount?.Text ?? "no price", d.EnergyKwh.Text, d.MeasuredShare.Text]), 31), size: 8);
    }

    void PerUnit(Sheet sheet)
    {
        var per = account.PerUnit;
        var rows = new List<IReadOnlyList<string>>();
        if (per.PerDay is { } day) rows.Add(["A day", day.Text]);
        if (per.PerHour is { } hour) rows.Add(["An hour, day and night", hour.Text]);
        if (per.PerGloryHoleHour is { Cost: { } hole } work) rows.Add([$"An hour at the glory hole ({work.Hours.Text})", hole.Text]);
        foreach (var person in per.Persons.Take(6)) rows.Add([$"{person.Who}, {person.Hours.Text}", person.Amount?.Text ?? person.EnergyKwh.Text]);
        if (rows.Count > 0) sheet.Table([new("What it cost", 0), new("", 66)], rows);
        if (per.Persons.Count > 6) sheet.Note($"and {per.Persons.Count - 6} more people in the CSV");
    }

    static void Some(Sheet sheet, IReadOnlyList<string> lines, int most, string? title = null)
    {
        if (lines.Count == 0) return;
        if (title is not null) sheet.Title(title);
        foreach (var line in lines.Take(most)) sheet.Note(line);
        if (lines.Count > most) sheet.Note($"and {lines.Count - most} more in the CSV");
    }

    static IEnumerable<IReadOnlyList<string>> Cut(IEnumerable<IReadOnlyList<string>> rows, int most)
    {
        var all = rows.ToList();
        if (all.Count <= most) return all;
        string[] more = [$"and {all.Count - most + 1} more in the CSV", .. Enumerable.Repeat("", all[0].Count - 1)];
        return all.Take(most - 1).Append(more);
    }

    static (Sheet Left, Sheet Right) Halves(SKCanvas canvas, PrintFonts fonts, Sheet page, float leftWidth) =>
        (new(canvas, fonts, page.Left, page.Y, leftWidth), new(canvas, fonts, page.Left + leftWidth + Gap, page.Y, page.Width - leftWidth - Gap));

    Sheet Frame(SKCanvas canvas, PrintFonts fonts, int number)
    {
        var (width, height) = (Paper.Width, Paper.Height);
        fonts.Draw(canvas, fonts.Fit(account.Span.Studio, 9, width / 2), Margin, Margin, 9, PrintedDrawing.Dim);
        fonts.Draw(canvas, account.Span.Title, width - Margin, Margin, 9, PrintedDrawing.Dim, align: SKTextAlign.Right);
        fonts.Draw(canvas, $"Counted by the studio's own meters and sensors until {account.Span.UntilText}. Intervals are 95 %, estimates are marked. The utility's bill decides.",
            Margin, height - Margin + 8, 7.5f, PrintedDrawing.Dim);
        fonts.Draw(canvas, $"{number} of 2", width - Margin, height - Margin + 8, 7.5f, PrintedDrawing.Dim, align: SKTextAlign.Right);
        return new Sheet(canvas, fonts, Margin, Margin + 6, width - 2 * Margin);
    }
}
