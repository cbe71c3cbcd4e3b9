using HotShop.Monitor.Money;
using HotShop.Monitor.Reports.Pictures;
using Xunit;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The curve of a kilogram: what lies above the line on paper took more than its throughput explains.</summary>
public class KilogramPictureTests
{
    static readonly StudioFormat format = new(OwnersMonths.Configuration());

    static KilogramAt At(string label, double kilograms, double energy) => new(label, kilograms, kilograms, kilograms, $"{kilograms} kg a day", new Interval(energy, energy - 1, energy + 1, $"{energy} kWh/kg", ""));

    /// <summary>Holding 20 kW and 1 kWh/kg above: 480/x + 1.</summary>
    static readonly KilogramCurve curve = new("Furnace 1", [.. Enumerable.Range(2, 5).Select(i => At("", i * 10, 480.0 / (i * 10) + 1))],
        [At("August 2026", 30, 17), At("September 2026", 40, 13)], At("October 2026", 35, 18));

    static readonly Drawing drawing = KilogramPicture.Draw(curve, format, 400, 15);

    [Fact]
    public void A_month_that_took_more_than_its_throughput_explains_lies_above_the_line()
    {
        var dot = Assert.Single(drawing.Marks.OfType<Mark.Dot>(), d => !d.IsOpen);
        var line = drawing.Marks.OfType<Mark.Line>().First().Points;
        var (before, after) = (line.Last(p => p.X <= dot.X), line.First(p => p.X > dot.X));
        Assert.True(dot.Y < before.Y + (after.Y - before.Y) * (dot.X - before.X) / (after.X - before.X));
        Assert.All(line.Zip(line.Skip(1)), pair => Assert.True(pair.First.X < pair.Second.X && pair.First.Y < pair.Second.Y, "more glass, less energy a kilogram"));
    }

    [Fact]
    public void Earlier_months_are_rings_and_this_one_is_named_with_its_figure()
    {
        Assert.Equal(2, drawing.Marks.OfType<Mark.Dot>().Count(d => d.IsOpen));
        Assert.Contains(drawing.Marks.OfType<Mark.Words>(), w => w.Text == "October 2026: 18 kWh/kg");
    }

    [Fact]
    public void A_month_without_days_enough_draws_the_line_alone() =>
        Assert.DoesNotContain(KilogramPicture.Draw(curve with { Months = [], Here = null }, format, 400, 15).Marks.OfType<Mark.Dot>(), d => double.IsFinite(d.X));

    [Fact]
    public void Nothing_lies_outside_the_picture() =>
        Assert.All(drawing.Marks.OfType<Mark.Dot>(), d => Assert.True(d.X >= 0 && d.X <= drawing.Width && d.Y >= 0 && d.Y <= drawing.Height));
}
