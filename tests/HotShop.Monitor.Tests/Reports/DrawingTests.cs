using System.Xml.Linq;
using FsCheck.Xunit;
using HotShop.Monitor.Reports.Pdf;
using HotShop.Monitor.Reports.Pictures;
using UglyToad.PdfPig;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>One drawing, on the page and on paper.</summary>
public sealed class DrawingTests : IDisposable
{
    const string Hostile = "<script>alert(1)</script> & \"quoted\" € ₂";
    readonly PrintFonts fonts = new();

    public void Dispose() => fonts.Dispose();

    static Drawing Some(string words) => new(100, 50, words, [new Mark.Box(0, 0, 50, 20, Tone.Holding, Fill.Hatched), new Mark.Words(10, 40, words, 8)]);

    [Fact]
    public void Names_in_a_drawing_stay_names()
    {
        var svg = XElement.Parse(SvgDrawing.Write(Some(Hostile), "d"));
        Assert.Equal([Hostile, Hostile], svg.DescendantsAndSelf().Where(e => e.Name.LocalName is "title" or "text").Select(e => e.Value));
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName == "script");
    }

    [Fact]
    public void The_same_words_can_be_read_back_from_the_printed_page()
    {
        using var pdf = PdfDocument.Open(Paper.A4.Print("t", DateTimeOffset.UnixEpoch, [canvas => PrintedDrawing.Draw(canvas, Some(Hostile), 20, 20, 1, fonts)]));
        Assert.Equal(Hostile, pdf.GetPage(1).Text);
        Assert.Equal((595, 842), (Math.Round(pdf.GetPage(1).Width), Math.Round(pdf.GetPage(1).Height)));   // ISO 216 A4
    }

    [Fact]
    public void The_font_has_every_sign_that_the_figures_use() =>
        Assert.Empty(fonts.Missing("0123456789 .,'-−–—…·±×≈<>()%/ °C °F m³ cm² CO₂ kWh € £ ¥ $ kr zł Kč ÄÖÜäöüßéèêçñåøæőžšćł Ω АБВ ΑΒΓ \u00a0"));

    [Theory, InlineData("a word that is far too long for the cell", 30f), InlineData("short", 300f)]
    public void Text_that_is_cut_fits_and_says_so(string text, float width)
    {
        var cut = fonts.Fit(text, 10, width);
        Assert.True(fonts.Width(cut, 10) <= width);
        Assert.Equal(cut == text, !cut.EndsWith('…'));
    }

    [Fact]
    public void A_paragraph_is_broken_between_words_and_none_is_lost()
    {
        const string words = "October cost more than September because the furnace was held hotter on eleven nights";
        var lines = fonts.Lines(words, 10, 90).ToList();
        Assert.Equal(words, string.Join(' ', lines));
        Assert.All(lines, line => Assert.True(fonts.Width(line, 10) <= 90));
    }

    [Fact]
    public void The_same_page_makes_the_same_file() =>
        Assert.Equal(Paper.Letter.Print("t", DateTimeOffset.UnixEpoch, [c => PrintedDrawing.Draw(c, Some("one"), 0, 0, 1, fonts)]), Paper.Letter.Print("t", DateTimeOffset.UnixEpoch, [c => PrintedDrawing.Draw(c, Some("one"), 0, 0, 1, fonts)]));

    [Property]
    public void An_axis_has_few_round_ticks_and_none_above_the_highest(ushort whole, byte cents)
    {
        var highest = whole + cents / 256m;
        var ticks = CostStrip.Ticks(highest);
        Assert.Equal(highest > 0, ticks.Count > 0);
        Assert.InRange(ticks.Count, 0, 5);
        Assert.All(ticks, t => Assert.True(t > 0 && t <= highest));
    }
}
