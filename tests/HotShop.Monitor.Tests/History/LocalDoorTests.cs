using System.Net;
using System.Text;
using HotShop.Monitor.Commands;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.History.Import;
using HotShop.Monitor.History.Local;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.History;

/// <summary>A command beside a running service: let in by the key in the data folder, and nobody else.</summary>
public sealed class LocalDoorTests
{
    static readonly Instant Eight = OpenStudio.Start;

    static Task<ImportReport> Send(TestService service, string table, string query = "kind=readings") =>
        LocalCall.Send<ImportReport>(service.Plan, $"import?{query}", new ByteArrayContent(Encoding.UTF8.GetBytes(table)), default);

    [Fact]
    public async Task A_table_goes_in_beside_the_live_readings_and_none_of_those_is_lost()
    {
        await using var service = await TestService.Start();
        // More than the pages' bound of a megabyte.
        var table = Tables.Of("furnace-1/gas-flow", Every(Seconds(1), Eight - Hours(9), Eight - Hours(1)).Select((at, i) => (at, 2 + i % 50 / 10.0)));
        Assert.True(table.Length > 1 << 20);
        var importing = Send(service, table);
        var sent = 0;
        while (!importing.IsCompleted) await service.Send("furnace-1/gas-flow", [(Eight + Duration.FromMilliseconds(++sent), 3.5)]);
        var report = await importing;
        Assert.Equal((28_801, 0, 0), (report.Added, report.Conflicts, report.ProblemCount));
        Assert.True(sent > 0);
        Assert.Equal(28_801 + sent, Rows(service));
        Assert.Empty(Directory.GetFiles(service.Plan.DataDirectory, "*.part"));
    }

    [Fact]
    public async Task What_is_wrong_comes_back_by_line_and_a_table_that_is_none_is_refused()
    {
        await using var service = await TestService.Start();
        var report = await Send(service, "channel,time,value\nfurnace-1/crown,never,1\n");
        Assert.Equal((2, "'never'"), (Assert.Single(report.Problems).Line, report.Problems[0].Reason[..7]));
        Assert.Contains("'channel' is missing", (await Assert.ThrowsAsync<CsvFileException>(() => Send(service, "time,value\n"))).Message, StringComparison.Ordinal);
        Assert.Contains("there is no kind", (await Assert.ThrowsAsync<CsvFileException>(() => Send(service, "time,value\n", "kind=..%2F..%2Fetc"))).Message, StringComparison.Ordinal);
        // A name is only shown: no path of it is ever opened.
        Assert.Contains("../../etc/passwd, line 1", (await Assert.ThrowsAsync<CsvFileException>(() => Send(service, "x\n", "kind=readings&name=..%2F..%2Fetc%2Fpasswd"))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_the_key_of_the_data_folder_nobody_comes_in_not_even_the_owner()
    {
        await using var service = await TestService.Start();
        var key = LocalKey.Read(service.Plan.DataDirectory)!;
        if (!OperatingSystem.IsWindows())
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(Path.Combine(service.Plan.DataDirectory, "local.json")));
        Assert.Equal(HttpStatusCode.Forbidden, await Status(null));
        Assert.Equal(HttpStatusCode.Forbidden, await Status(new string('0', key.Key.Length)));
        Assert.Equal(HttpStatusCode.Forbidden, await Status(key.Key, forwardedFor: "192.0.2.7"));
        Assert.Equal(HttpStatusCode.OK, await Status(key.Key));

        async Task<HttpStatusCode> Status(string? offered, string? forwardedFor = null)
        {
            using var request = new HttpRequestMessage(HttpMethod.Post, new Uri("/api/local/import?kind=readings", UriKind.Relative)) { Content = new StringContent("channel,time,value\n") };
            if (offered is not null) request.Headers.Add(LocalKey.Header, offered);
            if (forwardedFor is not null) request.Headers.Add("X-Forwarded-For", forwardedFor);
            using var answer = await service.Http.SendAsync(request);
            return answer.StatusCode;
        }
    }

    [Fact]
    public async Task The_key_goes_when_the_service_stops()
    {
        await using var service = await TestService.Start();
        Assert.NotNull(LocalKey.Read(service.Plan.DataDirectory));
        await service.Stop();
        Assert.Null(LocalKey.Read(service.Plan.DataDirectory));
    }

    static long Rows(TestService service)
    {
        using var connection = service.The<HotShop.Monitor.Store.IStoreReader>().Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT (SELECT count(*) FROM arrival) + (SELECT count(*) FROM reading)";
        return (long)command.ExecuteScalar()!;
    }
}
