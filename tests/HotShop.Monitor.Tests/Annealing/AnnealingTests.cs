using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Alarms;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Annealing;

public sealed class AnnealingTests : IAsyncLifetime
{
    // 2.5 h hold and 12 K/h over 46 K: 25 to 38 mm of soft studio glass; the rest as fast as the piece stands. Own figures.
    const string Bowl = """
        {"id":"bowl-7","appliance":"annealer-1","name":"Bowl, 38 mm","startAt":"2026-03-01T00:00:00Z","startCelsius":495,
         "stages":[{"holdMinutes":150},{"toCelsius":449,"kelvinPerHour":12},{"toCelsius":60,"kelvinPerHour":100}]}
        """;

    DeskHost host = null!;

    public async ValueTask InitializeAsync() => host = await DeskHost.Start();

    public ValueTask DisposeAsync() => host.DisposeAsync();

    [Fact] public async Task A_typed_load_is_answered_with_its_curve_and_its_end()
    {
        var (status, load) = await host.Post("/api/annealing/loads", Bowl);
        Assert.Equal((201, "bowl-7", "quillmere/annealer-1"), (status, load.GetProperty("id").GetString(), load.GetProperty("appliance").GetString()));
        // 150 min, then 46 K at 12 K/h = 3 h 50 min, then 389 K at 100 K/h = 3 h 53 min 24 s.
        Assert.Equal(
            [("2026-03-01T00:00:00Z", 495.0), ("2026-03-01T02:30:00Z", 495.0), ("2026-03-01T06:20:00Z", 449.0), ("2026-03-01T10:13:24Z", 60.0)],
            load.GetProperty("curve").EnumerateArray().Select(p => (p.GetProperty("time").GetString()!, p.GetProperty("celsius").GetDouble())));
        Assert.Equal("2026-03-01T10:13:24Z", load.GetProperty("doneAt").GetString());
        Assert.Equal((495.0, 0), (load.GetProperty("dueCelsius").GetDouble(), load.GetProperty("stage").GetInt32()));
    }

    [Fact] public async Task The_same_id_is_the_same_load()
    {
        await host.Post("/api/annealing/loads", Bowl);
        var (status, load) = await host.Post("/api/annealing/loads", Bowl.Replace("495", "510", StringComparison.Ordinal));
        Assert.Equal((200, 495.0), (status, load.GetProperty("startCelsius").GetDouble()));
        Assert.Single((await host.Get("/api/annealing/loads")).EnumerateArray());
    }

    [Fact] public async Task A_load_shows_what_was_measured_and_how_far_off_it_is_now()
    {
        host.Store.Run("INSERT INTO series VALUES (1, 'annealer-1/chamber', 'Cel'); INSERT INTO minute VALUES (1, " + Instant.FromUtc(2026, 3, 1, 0, 30).ToMicroseconds() + ", 494.5, 494, 495, 6)");
        await host.Post("/api/annealing/loads", Bowl);
        await host.SendEvery(10, 3, "annealer-1/chamber", 489);
        var load = await host.Get("/api/annealing/loads/bowl-7");
        var point = Assert.Single(load.GetProperty("measured").EnumerateArray());
        Assert.Equal(("2026-03-01T00:30:00Z", 494.5), (point.GetProperty("time").GetString(), point.GetProperty("meanCelsius").GetDouble()));
        Assert.Equal((489.0, -6.0), (load.GetProperty("measuredCelsius").GetDouble(), load.GetProperty("deviationKelvin").GetDouble()));
    }

    [Theory]
    [InlineData("\"annealer-1\"", "\"furnace-1\"", "'furnace-1' is no annealer: name one that is")]
    [InlineData("\"annealer-1\"", "\"annealer-9\"", "there is no appliance 'annealer-9'")]
    [InlineData("2026-03-01T00:00:00Z", "tomorrow", "'startAt' must be a time like 2026-03-01T18:30:00Z")]
    [InlineData("2026-03-01T00:00:00Z", "2036-03-01T00:00:00Z", "write a time within 60 days of now")]
    [InlineData("\"startCelsius\":495", "\"startCelsius\":923", "'startCelsius' must be a number from 0 to 800")]
    [InlineData("{\"holdMinutes\":150}", "{}", "stages[0]: is empty: send toCelsius and kelvinPerHour, or holdMinutes")]
    [InlineData("{\"holdMinutes\":150}", "null", "stages[0]: is empty")]
    [InlineData("{\"holdMinutes\":150}", "{\"holdMinutes\":150,\"toCelsius\":3}", "stages[0]: is a ramp and a hold at once")]
    [InlineData("\"kelvinPerHour\":12", "\"kelvinPerHour\":0", "stages[1]: 'kelvinPerHour' must be a number from 0.05 to 2000")]
    [InlineData("\"kelvinPerHour\":100", "\"kelvinPerHour\":0.1", "at most 60 are kept; is a rate wrong?")]
    [InlineData("bowl-7", "bowl/7", "'id' must be 1 to 64 letters")]
    public async Task What_is_wrong_with_a_load_is_said(string right, string wrong, string reason)
    {
        var (status, problem) = await host.Post("/api/annealing/loads", Bowl.Replace(right, wrong, StringComparison.Ordinal));
        Assert.InRange(status, 400, 404);
        Assert.Contains(reason, problem.GetProperty("detail").GetString(), StringComparison.Ordinal);
        Assert.Empty((await host.Get("/api/annealing/loads")).EnumerateArray());
    }

    [Fact] public async Task A_load_that_nobody_typed_is_not_found() =>
        Assert.Equal(System.Net.HttpStatusCode.NotFound, (await host.Http.GetAsync(new Uri("/api/annealing/loads/none", UriKind.Relative), TestContext.Current.CancellationToken)).StatusCode);

    [Fact] public async Task The_next_load_takes_over_from_its_own_start_also_after_a_restart()
    {
        await host.Post("/api/annealing/loads", Bowl);
        await host.Post("/api/annealing/loads", Bowl.Replace("bowl-7", "cups-3", StringComparison.Ordinal).Replace("T00:00:00Z", "T05:00:00Z", StringComparison.Ordinal));
        foreach (var book in new[] { host.The<LoadBook>(), new LoadBook(host.Store, host.Store) })
        {
            Assert.Null(book.For("annealer-1", Instant.FromUtc(2026, 2, 28, 23, 59)));
            Assert.Equal("bowl-7", book.All.Single(l => ReferenceEquals(l.Curve, book.For("annealer-1", Instant.FromUtc(2026, 3, 1, 4, 59)))).Id);
            Assert.Equal("cups-3", book.All.Single(l => ReferenceEquals(l.Curve, book.For("annealer-1", Instant.FromUtc(2026, 3, 1, 5, 0)))).Id);
            Assert.Null(book.For("annealer-1", Instant.FromUtc(2026, 3, 1, 15, 14)));
            Assert.Equal(Instant.FromUtc(2026, 3, 1, 5, 0), book.ClosesAt(book.Find("bowl-7")!));
            Assert.Null(book.For("furnace-1", Instant.FromUtc(2026, 3, 1, 5, 0)));
        }
    }

    [Fact] public async Task Loads_are_never_rewritten()
    {
        await host.Post("/api/annealing/loads", Bowl);
        Assert.Contains("never rewritten", Assert.Throws<SqliteException>(() => host.Store.Run("UPDATE annealing_load SET name = ''")).Message, StringComparison.Ordinal);
    }

    [Fact] public async Task A_load_that_could_not_be_stored_is_not_there()
    {
        host.Store.IsFull = true;
        await host.Post("/api/annealing/loads", Bowl);
        host.Store.IsFull = false;
        Assert.Empty(host.The<LoadBook>().All);
        Assert.Equal(201, (await host.Post("/api/annealing/loads", Bowl)).Status);
    }
}
