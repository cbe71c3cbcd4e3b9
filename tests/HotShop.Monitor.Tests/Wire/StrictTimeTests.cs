using Xunit;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Tests.Wire;

public class StrictTimeTests
{
    // Examples of RFC 3339, section 5.8, with the instants its text gives.
    [Theory]
    [InlineData("1985-04-12T23:20:50.52Z", "1985-04-12T23:20:50.52Z")]
    [InlineData("1996-12-19T16:39:57-08:00", "1996-12-20T00:39:57Z")]
    [InlineData("1990-12-31T23:59:60Z", "1991-01-01T00:00:00Z")]
    [InlineData("1990-12-31T15:59:60-08:00", "1991-01-01T00:00:00Z")]
    [InlineData("1937-01-01T12:00:27.87+00:20", "1937-01-01T11:40:27.87Z")]
    [InlineData("2026-03-01t02:13:05z", "2026-03-01T02:13:05Z")]
    [InlineData("2026-03-01T02:13:05-00:00", "2026-03-01T02:13:05Z")]
    [InlineData("2026-03-01T02:13:05.1234567899Z", "2026-03-01T02:13:05.123456789Z")]
    [InlineData("2024-02-29T00:00:00+23:59", "2024-02-28T00:01:00Z")]
    public void A_time_of_the_standard_is_read(string text, string instant) =>
        Assert.Equal(InstantPattern.ExtendedIso.Parse(instant).Value, StrictTime.Parse(text));

    [Theory]
    [InlineData("2026-03-01T02:13:05")]
    [InlineData("2026-03-01 02:13:05Z")]
    [InlineData("2026-03-01")]
    [InlineData("2026-02-29T00:00:00Z")]
    [InlineData("2026-13-01T00:00:00Z")]
    [InlineData("2026-00-01T00:00:00Z")]
    [InlineData("2026-03-00T00:00:00Z")]
    [InlineData("2026-03-01T24:00:00Z")]
    [InlineData("2026-03-01T12:00:60Z")]
    [InlineData("2026-03-01T12:60:00Z")]
    [InlineData("2026-03-01T12:00:00.Z")]
    [InlineData("2026-03-01T12:00:00,5Z")]
    [InlineData("2026-03-01T12:00:00+0100")]
    [InlineData("2026-03-01T12:00:00+24:00")]
    [InlineData("2026-03-01T12:00:00+01:60")]
    [InlineData("2026-03-01T12:00:00Z ")]
    [InlineData("２０26-03-01T12:00:00Z")]
    [InlineData("0000-01-01T00:00:00Z")]
    [InlineData("9999-12-31T23:59:59-23:59")]
    [InlineData("+2026-03-01T12:00:00Z")]
    [InlineData("")]
    public void Anything_else_is_no_time(string text) => Assert.Null(StrictTime.Parse(text));

    [Fact]
    public void Every_instant_comes_back_as_it_was_written()
    {
        var random = new Random(20260301);
        for (var i = 0; i < 5000; i++)
        {
            var instant = Instant.FromUnixTimeTicks(random.NextInt64(-621_355_968_000_000_00L * 8, 200_000_000_000_000_000L));
            var offset = Offset.FromSeconds(random.Next(-17, 18) * 3600 + random.Next(0, 60) * 60);
            var text = OffsetDateTimePattern.Rfc3339.Format(instant.WithOffset(offset));
            Assert.Equal(instant, StrictTime.Parse(text));
        }
    }
}
