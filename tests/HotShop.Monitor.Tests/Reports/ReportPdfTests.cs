using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Reports.Pdf;
using NodaTime;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The printed report read back by a reader of another make: two pages, every figure the account's own text, every letter there.</summary>
[Collection("owner")]
public sealed class ReportPdfTests(OwnersOctober owner)
{
    static byte[] Pdf(Account account, StudioFormat format) => new ReportPdf(account, format).Write(Instant.FromUtc(2026, 11, 1, 6, 0));

    /// <summary>Without spaces: where a line was broken matters to nobody.</summary>
    static string Squeezed(string text) => string.Concat(text.Where(c => !char.IsWhiteSpace(c)));

    static (string First, string Second) Read(byte[] pdf)
    {
        using var document = PdfDocument.Open(pdf);
        Assert.Equal(2, document.NumberOfPages);
        return (Squeezed(document.GetPage(1).Text), Squeezed(document.GetPage(2).Text));
    }

    static void Has(string page, string text) => Assert.Contains(Squeezed(text), page, StringComparison.Ordinal);

    [Theory, InlineData(9), InlineData(10)]
    public void Every_total_on_paper_is_the_accounts_own_text(int month)
    {
        var (account, story) = (owner.Account(month), owner.Story(month));
        var (first, second) = Read(Pdf(account, owner.Format));
        Has(first, story.Headline);
        Has(first, account.Cost!.Text);
        Assert.All(story.Lede, sentence => Has(first, sentence));
        Has(first, story.Measured);
        Assert.All(WhereRow.Of(account.Where, owner.Format), row => Has(first, $"{row.Title}{row.Amount!.Text}{row.Share.Text}"));
        Assert.All(account.Comparisons, c => Has(first, $"{c.Against}{c.Cost!.Text}{c.Difference!.Text}{c.EnergyKwh.Text}"));
        Assert.All(account.Days, day => Has(second, $"{day.Amount!.Text}{day.EnergyKwh.Text}{day.MeasuredShare.Text}"));
        Assert.All(account.Lines, line => Has(second, $"{line.Name}: {line.Calculation}{line.Amount.Text}"));
        Has(second, $"Total{account.Cost.Text}");
        Assert.All(story.Kilogram, sentence => Has(second, sentence));
        Assert.All(story.Prices, price => Has(second, price));
        Has(second, story.CarbonTitle);
        Has(second, account.PerUnit.PerGloryHoleHour!.Cost!.Text);
    }

    [Fact]
    public void Its_fonts_travel_with_it_and_only_the_letters_it_needs()
    {
        var pdf = Pdf(owner.Account(), owner.Format);
        using var document = PdfDocument.Open(pdf);
        var fonts = document.GetPages().SelectMany(p => p.Letters).Select(l => l.FontName!).Distinct().ToList();
        // A subset's name begins with six capitals and a plus sign (ISO 32000-1, 9.6.4).
        Assert.All(fonts, name => Assert.Matches("^[A-Z]{6}\\+RobotoCondensed-(Regular|Bold)$", name));
        Assert.InRange(pdf.Length, 20_000, 300_000);
    }

    [Fact]
    public void No_letter_of_it_is_missing_and_none_lies_off_the_paper()
    {
        using var document = PdfDocument.Open(Pdf(owner.Account(), owner.Format));
        using var fonts = new PrintFonts();
        foreach (var page in document.GetPages())
        {
            Assert.DoesNotContain('\uFFFD', page.Text);
            Assert.Empty(fonts.Missing(page.Text));
            Assert.All(page.Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)), l => Assert.True(IsOn(page, l), $"'{l.Value}' at {l.BoundingBox}"));
        }
        Assert.Contains("₂", document.GetPage(2).Text, StringComparison.Ordinal);
    }

    static bool IsOn(Page page, Letter letter) =>
        letter.BoundingBox.Left >= 36 && letter.BoundingBox.Right <= page.Width - 36 && letter.BoundingBox.Bottom >= 24 && letter.BoundingBox.Top <= page.Height - 24;

    [Fact]
    public void A_studio_with_more_than_fits_keeps_its_two_pages_and_says_what_is_left_out()
    {
        var account = owner.Account(9);
        var many = account with
        {
            Where = [.. Enumerable.Range(1, 40).SelectMany(i => account.Where.Where(w => w.Appliance is not null).Select(w => w with { Appliance = $"{w.Appliance}-{i}", Name = $"{w.Name} number {i} in the far corner by the door" }))],
            Lines = [.. Enumerable.Repeat(account.Lines[0], 30)],
            Prices = [.. Enumerable.Repeat(account.Prices[0], 20)],
            MissingPrices = [.. Enumerable.Range(0, 9).Select(i => new MissingPrice(Monitor.Fuel.EnergyKind.Gas, account.Span.First, account.Span.Last, new Monitor.Money.Interval(1, 1, 1, "1 kWh", "1 – 1 kWh"), "no price of gas for a while"))],
        };
        using var document = PdfDocument.Open(Pdf(many, owner.Format));
        Assert.Equal(2, document.NumberOfPages);
        Assert.Contains("more in the CSV", document.GetPage(1).Text, StringComparison.Ordinal);
        Assert.All(document.GetPages(), page => Assert.All(page.Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)), l => Assert.True(IsOn(page, l), $"'{l.Value}' at {l.BoundingBox}")));
    }

    [Fact]
    public void In_the_United_States_it_is_on_Letter_paper_with_dollars_before_the_number()
    {
        var format = new StudioFormat(OwnersMonths.Configuration() with { Currency = "USD", Zone = "America/New_York", Culture = "en-US" });
        using var document = PdfDocument.Open(Pdf(owner.Account() with { Cost = format.Shown(1234.5m, 0m) }, format));
        Assert.Equal((612, 792), (document.GetPage(1).Width, document.GetPage(1).Height));   // ANSI A
        Assert.Contains("$1,234.50", document.GetPage(1).Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_month_of_which_nothing_is_known_says_so_on_paper_too()
    {
        var empty = owner.Service.The<AccountBook>().Of(new(2026, 3, 1), new(2026, 3, 31), owner.Service.Now);
        Has(Read(Pdf(empty, owner.Format)).First, new AccountStory(empty, owner.Format).Headline);
    }

    [Fact]
    public async Task The_page_gives_the_file_and_names_it_by_its_month()
    {
        using var answer = await owner.Http.GetAsync(new Uri("/api/account.pdf?month=2026-09", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(("application/pdf", "hotshop-2026-09.pdf"), (answer.Content.Headers.ContentType!.MediaType, answer.Content.Headers.ContentDisposition!.FileName));
        Has(Read(await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).First, owner.Account(9).Cost!.Text);
    }

    [Fact]
    public void Both_pages_can_be_looked_at_as_pictures() =>
        Assert.All(new ReportPdf(owner.Account(), owner.Format).Pictures(1), png => Assert.Equal("\u0089PNG", System.Text.Encoding.Latin1.GetString(png, 0, 4)));
}
