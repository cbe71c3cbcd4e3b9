using HotShop.Monitor.Demo;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Commands;

public sealed class DemoStartTests
{
    static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    [Fact]
    public void A_demo_begins_at_eight_on_a_working_day() =>
        // 1 March 2026 is a Sunday: the Saturday before it is worked.
        Assert.Equal(Instant.FromUtc(2026, 2, 28, 7, 0), DemoPlan.Start(Instant.FromUtc(2026, 3, 1, 12, 0), Berlin, newestKept: null));

    [Fact]
    public void Kept_data_go_on_after_their_last_reading()
    {
        var newest = Instant.FromUtc(2026, 3, 3, 15, 20);
        Assert.True(DemoPlan.Start(Instant.FromUtc(2026, 3, 3, 12, 0), Berlin, newest) > newest);
    }

    [Fact]
    public async Task The_last_reading_of_a_folder_is_found_whether_moved_or_not()
    {
        Assert.Null(StudioStore.NewestReading(Directory.CreateTempSubdirectory("hotshop-empty-").FullName));
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/gas-flow", "{\"value\":2,\"time\":\"2026-03-02T07:30:00Z\"}");
        Assert.Equal(Instant.FromUtc(2026, 3, 2, 7, 30), StudioStore.NewestReading(studio.Plan.DataDirectory));
    }
}
