using System.Xml.Linq;
using HotShop.Monitor.Web.Pages.Night;
using HotShop.Monitor.Wire;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Web;

public class NightStripTests
{
    static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 2, 26);
    static readonly DateTimeZone Zone = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    [Fact]
    public void Its_title_says_in_words_what_it_shows()
    {
        var title = Title(Draw(NightCourseTests.Falling(78, noise: 0), limit: 1060));

        Assert.Equal("From 1148 °C, 2099 °F at 03:12 to 1130 °C, 2066 °F at 03:26; it began at 03:12, in forty minutes about 1078 °C, 1972 °F if it goes on so", title);
    }

    [Fact]
    public void A_gap_is_hatched_and_never_drawn_across()
    {
        var points = NightCourseTests.Falling(78, noise: 0).Where(p => p.At < Now - Duration.FromMinutes(10) || p.At > Now - Duration.FromMinutes(5)).ToList();

        var svg = Draw(points, limit: null);

        // One before the first reading, one in the middle.
        Assert.Equal(2, svg.Descendants().Count(e => (string?)e.Attribute("fill") == "url(#hatch)"));
        Assert.DoesNotContain(svg.Descendants().Where(e => (string?)e.Attribute("class") == "measured"), e => (double)e.Attribute("x2")! - (double)e.Attribute("x1")! > 10);
    }

    [Fact]
    public void Without_any_reading_it_says_so() => Assert.Equal("No readings in the last eighty minutes", Title(Draw([], limit: null)));

    [Fact]
    public void A_trouble_older_than_the_strip_is_tied_to_its_edge()
    {
        var svg = Draw(NightCourseTests.Falling(78, noise: 0), limit: null, since: Now - Duration.FromHours(9));

        var ring = svg.Descendants().Single(e => e.Name.LocalName == "circle");
        Assert.InRange((double)ring.Attribute("cx")!, 0, 60);
    }

    static XElement Draw(IReadOnlyList<NightPoint> points, double? limit, Instant? since = null) => XElement.Parse(NightStrip.Svg(new NightPicture(
        points, Duration.FromSeconds(30), limit, since ?? Now - Duration.FromMinutes(14), Now, Zone, IsTemperature: true, v => NightValues.Words(Quantity.Temperature, v))));

    static string Title(XElement svg) => svg.Elements().Single(e => e.Name.LocalName == "title").Value;
}
