using HotShop.Monitor.Web.Pages.Night;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Web;

public class NightCourseTests
{
    static readonly Instant Now = Instant.FromUtc(2026, 3, 1, 2, 26);

    [Fact]
    public void A_furnace_that_falls_evenly_reaches_its_limit_when_the_line_does()
    {
        var course = NightCourse.Of(Falling(78, noise: 0), Now)!;

        Assert.Equal(-78, course.PerHour, 6);
        Assert.Equal(1130, course.Value, 6);
        // 1130 - 1060 = 70 °C at 78 °C an hour: 53.8 minutes.
        Assert.Equal(53.846, (course.Reaches(1060)!.Value - Now).TotalMinutes, 3);
    }

    [Fact]
    public void A_value_that_moves_away_never_reaches_the_limit() => Assert.Null(NightCourse.Of(Falling(78, noise: 0), Now)!.Reaches(1290));

    // Textbooks give the standard deviation of a new observation as s·sqrt(1 + 1/n + (x - mean)²/Sxx) (from memory); worked by hand
    // for x = -4, -3, -2, -1, 0 minutes and y = 0, 1, 0, 1, 0: slope 0, s² = 1.2/3 = 0.4, Sxx = 10 min², t(0.975, 3) = 3.182 (table).
    [Fact]
    public void The_band_is_the_prediction_of_one_more_reading()
    {
        NightPoint[] points = [.. new[] { 0.0, 1, 0, 1, 0 }.Select((v, i) => new NightPoint(Now - Duration.FromMinutes(4 - i), v))];

        var (value, half) = NightCourse.Of(points, Now)!.After(Duration.FromMinutes(6));

        Assert.Equal(0.4, value, 9);
        Assert.Equal(3.182 * Math.Sqrt(0.4) * Math.Sqrt(1 + 1.0 / 5 + 64.0 / 10), half, 0.0009);
    }

    [Fact]
    public void Four_readings_are_too_few_to_say_where_it_goes() => Assert.Null(NightCourse.Of(Falling(78, noise: 0).TakeLast(4), Now));

    [Fact]
    public void What_happened_before_the_last_quarter_of_an_hour_is_another_story() =>
        Assert.Null(NightCourse.Of([.. Falling(78, noise: 0).Select(p => p with { At = p.At - Duration.FromMinutes(20) })], Now));

    internal static IReadOnlyList<NightPoint> Falling(double perHour, double noise) =>
        [.. Enumerable.Range(0, 85).Select(i => Now - Duration.FromSeconds(10 * (84 - i))).Select((at, i) => new NightPoint(at, 1130 + perHour * (Now - at).TotalHours + noise * (i % 2)))];
}
