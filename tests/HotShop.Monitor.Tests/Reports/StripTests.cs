using HotShop.Monitor.Reports.Pictures;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The strip of money keeps its measures: what is twice as dear is twice as high.</summary>
public class StripTests
{
    static readonly CostStrip october = new("October", "euros a day",
        [
            Step("1", 100, 50) with { IsMain = true }, Step("2", 200, 100), Step("3", 100, 0) with { IsUnmeasured = true, Note = "estimated" },
            Step("4", 0, 0) with { IsClosed = true }, Step("5", 120, 0) with { IsExpected = true, Range = (90, 150) },
        ],
        [new(Tone.GloryHoles, "glory holes", "150 €"), new(Tone.Holding, "holding", "520 €")], 4.5, a => $"{a} €");

    static StripStep Step(string day, decimal holding, decimal working) => new(day, $"Mon {day}", [new(Tone.Holding, holding), new(Tone.GloryHoles, working)], $"{holding + working} €");

    static Drawing Across => StripAcross.Draw(october, 1168, 360, 16);

    static Drawing Down => StripDown.Draw(october, 358, 14);

    [Fact]
    public void A_day_that_cost_twice_as_much_stands_twice_as_high()
    {
        var holding = Across.Marks.OfType<Mark.Box>().Where(b => b.Tone == Tone.Holding && b.X < 900).Select(b => b.Height).ToList();
        Assert.Equal(holding[0] * 2, holding[1], 6);
        var rows = Down.Marks.OfType<Mark.Box>().Where(b => b.Tone == Tone.Holding && b.X > 50 && b.Height > 14).Select(b => b.Width).ToList();
        Assert.Equal(rows[0] * 2, rows[1], 6);
    }

    [Fact]
    public void Layers_stand_on_each_other_without_gap_or_overlap()
    {
        var (lower, upper) = (Across.Marks.OfType<Mark.Box>().First(b => b.Tone == Tone.Holding), Across.Marks.OfType<Mark.Box>().First(b => b.Tone == Tone.GloryHoles));
        Assert.Equal(lower.X, upper.X, 6);
        Assert.Equal(lower.Y, upper.Y + upper.Height, 6);
    }

    [Fact]
    public void A_day_without_measurement_is_hatched_and_one_to_come_is_lighter_with_its_band()
    {
        foreach (var drawing in new[] { Across, Down })
        {
            Assert.Single(drawing.Marks.OfType<Mark.Box>(), b => b.Fill == Fill.Hatched);
            Assert.Single(drawing.Marks.OfType<Mark.Box>(), b => b is { Fill: Fill.Expected, Tone: Tone.Holding });
            Assert.Single(drawing.Marks.OfType<Mark.Box>(), b => b is { Fill: Fill.Expected, Tone: Tone.Band });
            Assert.Contains(drawing.Marks.OfType<Mark.Words>(), w => w.Text == "estimated");
        }
    }

    [Fact]
    public void On_a_phone_each_day_has_its_amount_beside_it() =>
        Assert.Equal(["150 €", "300 €", "100 €", "0 €", "120 €"], Down.Marks.OfType<Mark.Words>().Where(w => w.Anchor == Anchor.End).Select(w => w.Text));

    [Fact]
    public void Nothing_is_drawn_outside_the_picture() =>
        Assert.All(new[] { Across, Down }, d => Assert.All(d.Marks.OfType<Mark.Box>(), b => Assert.True(b.X >= 0 && b.Y >= 0 && b.X + b.Width <= d.Width && b.Y + b.Height <= d.Height, $"{b}")));

    [Fact]
    public void Nothing_at_all_draws_an_empty_strip_and_not_a_fault() =>
        Assert.DoesNotContain(StripAcross.Draw(october with { Steps = [], Keys = [], NowAfter = null }, 1168, 360, 16).Marks.OfType<Mark.Box>(), b => double.IsNaN(b.Height));
}
