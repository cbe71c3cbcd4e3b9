using System.Globalization;
using HotShop.Checks;
using HotShop.Monitor.Reports.Pictures;
using HotShop.Physics.Statistics;

namespace HotShop.Evaluation.Numbers;

/// <summary>A shift that a chart finds, and a level that wanders.</summary>
static class StatisticsPictures
{
    public static Drawing Cumulative()
    {
        var sums = new Cusum(325, 0.3175, 4.1959);
        var along = sums.Along(PublishedSeries.HandbookMeans);
        var first = Enumerable.Range(0, along.Count).First(i => sums.IsAlarm(along[i]));
        return new Chart("Cumulative sums find a shift of the mean (NIST handbook's example)", new("group", 0, 20, 1), new("sum beyond the allowance", 0, 20, 2))
            .Curve([(0, sums.Limit), (20, sums.Limit)], Tone.Dim, 2, dashed: true).Words(0, sums.Limit, "limit", right: 0.3, up: 0.4, tone: Tone.Dim)
            .Curve(along.Select((s, i) => (i + 1.0, s.Above))).Dots(along.Select((s, i) => (i + 1.0, s.Above)))
            .Curve(along.Select((s, i) => (i + 1.0, s.Below)), Tone.Dim, 2).Words(8.5, 1.1, "below the target", Anchor.Middle, right: 0, up: 0.2, tone: Tone.Dim)
            .Words(first + 1, along[first].Above, string.Create(CultureInfo.InvariantCulture, $"alarm at group {first + 1}"), Anchor.End, right: -0.6, up: 0.1, bold: true)
            .Words(17.5, along[17].Above, "above the target", Anchor.End, right: -0.9, up: 0, bold: true).Drawing;
    }

    public static Drawing Nile()
    {
        var flow = PublishedSeries.Nile();
        var course = LocalLevel.Fit([.. flow.Select(f => (double?)f.Value)])!.Along([.. flow.Select(f => (double?)f.Value)]);
        var smooth = course.Smoothed();
        return new Chart("A level that wanders under noise: the flow of the Nile at Aswan, 1871 to 1970", new("year", 1870, 1970, 10), new("hundred million m³ a year", 400, 1400, 200))
            .Band([.. flow.Select((f, i) => (f.Year, smooth[i].Low95, smooth[i].High95))])
            .Dots(flow.Select(f => (f.Year, f.Value)), open: true, radius: 4)
            .Curve(flow.Select((f, i) => (f.Year, smooth[i].Value)))
            .Words(1905, 1240, "the level with its 95 % band, variances by greatest likelihood").Drawing;
    }
}
