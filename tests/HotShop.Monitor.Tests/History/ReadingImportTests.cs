using System.IO.Compression;
using System.Text;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.History;

/// <summary>Readings out of a table: all of it or nothing, what was stored stays, and figures come out as if the readings had come in time.</summary>
public sealed class ReadingImportTests
{
    static readonly Instant Eight = OpenStudio.Start;
    static readonly Instant Later = Eight + Days(1);

    static IEnumerable<(Instant At, double Value)> Wavy(Instant from, Instant to) =>
        Every(Seconds(10), from, to).Select((at, i) => (at, 2 + Math.Sin(i / 17.0) + i % 7 / 3.0));

    [Fact]
    public async Task Twenty_bad_rows_of_twenty_thousand_are_all_named_and_none_is_imported()
    {
        await using var studio = Tables.Open(now: Later);
        var good = Tables.Of("furnace-1/gas-flow", Wavy(Later - Seconds(10) * 19_999, Later)).Split("\r\n");
        Assert.Equal(20_002, good.Length);
        var bad = good.ToArray();
        string[] slips =
        [
            "furnace-9/gas-flow,2026-03-02T02:00:00Z,2", "furnace-1/gas-flow,2026-03-02 25:00,2", "furnace-1/gas-flow,2026-03-02T02:00:00Z,two", "furnace-1/gas-flow,2026-03-02T02:00:00Z,",
            "furnace-1/gas-flow,2027-03-02T02:00:00Z,2", ",2026-03-02T02:00:00Z,2", "furnace-1/gas-flow,,2", "furnace-1/gas-flow,2026-03-02T02:00:00Z,NaN",
            "furnace-1/gas-flow,2026-03-02T02:00:00Z,2,5", "furnace-1/gas-flow,1966-03-02T02:00:00Z,2",
        ];
        for (var i = 0; i < 20; i++) bad[17 + i * 950] = slips[i % slips.Length];
        var report = await studio.Readings(string.Join("\r\n", bad));
        Assert.Equal((20, 20_000), (report.ProblemCount, report.Rows));
        Assert.Equal(Enumerable.Range(0, 20).Select(i => 18L + i * 950), report.Problems.Select(p => p.Line));
        string[] said = ["no channel 'furnace-9", "no time", "no number", "value is missing", "in the future", "channel is missing", "time is missing", "there is no value", "4 cells, the header 3", "before 2000"];
        for (var i = 0; i < 20; i++) Assert.Contains(said[i % said.Length], report.Problems[i].Reason, StringComparison.Ordinal);
        Assert.Equal(0, studio.Scalar("SELECT (SELECT count(*) FROM reading) + (SELECT count(*) FROM arrival) + (SELECT count(*) FROM dirty) + (SELECT count(*) FROM series)"));

        report = await studio.Readings(string.Join("\r\n", good));
        Assert.Equal((0, 20_000, 0), (report.ProblemCount, report.Added, report.Conflicts));
        Assert.Equal(20_000, studio.Scalar("SELECT count(*) FROM reading"));
        Assert.Equal(20_000, (await studio.Readings(string.Join("\r\n", good))).Known);
    }

    [Theory, InlineData("furnace-1/gas-flow"), InlineData("shop/meter"), InlineData("furnace-1/door"), InlineData("furnace-1/crown")]
    public async Task An_imported_hour_is_the_same_to_the_bit_as_one_that_came_in_time(string channel)
    {
        var readings = (channel switch
        {
            "shop/meter" => Every(Minutes(1), Eight, Eight + Hours(5)).Select((at, i) => (at, 99_990 + i * 0.13)).Select(r => (r.at, r.Item2 % 100_000)),
            "furnace-1/door" => Every(Minutes(7), Eight, Eight + Hours(5)).Select((at, i) => (at, (double)(i % 2))),
            _ => Wavy(Eight, Eight + Hours(5)),
        }).ToList();
        await using var live = Tables.Open();
        await live.Send(channel, readings);
        await using var imported = Tables.Open(now: live.Now);
        // Half of it was there; the file holds the rest, in no order.
        await imported.Send(channel, readings.Where((_, i) => i % 2 == 0));
        live.Now = imported.Now = Eight + Hours(7);
        await live.Move();
        await imported.Move();
        var report = await imported.Readings(Tables.Of(channel, readings.Where((_, i) => i % 2 == 1).OrderBy(r => r.Item2)));
        Assert.Equal(readings.Count / 2, report.Added);
        // Before the move has come by, and after it.
        Assert.Equal(live.Hours(channel), imported.Hours(channel));
        await imported.Move();
        Assert.Equal(live.Hours(channel), imported.Hours(channel));
        Assert.Equal(0, imported.Scalar("SELECT count(*) FROM dirty WHERE hour < 1772442000000000"));
        Assert.Empty(imported.Errors);
    }

    [Fact]
    public async Task What_is_stored_stays_unless_the_file_is_said_to_be_right()
    {
        await using var studio = Tables.Open();
        await studio.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight, Eight + Hours(2)));
        studio.Now = Later;
        await studio.Move();
        // One row is not moved yet, as it has just come.
        await studio.Send("furnace-1/gas-flow", (Later, 2.0));
        var table = Tables.Of("furnace-1/gas-flow", [(Eight + Hours(1), 3.5), (Later, 4), (Eight + Minutes(30), 2)]);
        var dry = await studio.Readings(table, dryRun: true);
        var report = await studio.Readings(table);
        Assert.Equal((dry.Conflicts, dry.Known, dry.Added), (report.Conflicts, report.Known, report.Added));
        Assert.Equal((2, 1, 0), (report.Conflicts, report.Known, report.Added));
        Assert.Contains("furnace-1/gas-flow at 2026-03-02T09:00:00Z is stored as 2 m3/h, the file says 3.5", report.ConflictList.Single(c => c.Line == 2).Reason, StringComparison.Ordinal);
        Assert.DoesNotContain(studio.Raw("furnace-1/gas-flow"), r => r.Value > 2);

        var before = studio.Hours("furnace-1/gas-flow");
        Assert.Equal(2, (await studio.Readings(table, replace: true)).Replaced);
        Assert.Equal([3.5, 4], studio.Raw("furnace-1/gas-flow").Where(r => r.Value > 2).Select(r => r.Value));
        await studio.Move();
        var after = studio.Hours("furnace-1/gas-flow");
        // 1.5 m³/h more at one moment: a triangle of 20 s, half of it in each of the two hours.
        Assert.Equal(1.5 * 20 / 3600 / 2, after.Sum(h => h.Amount) - before.Sum(h => h.Amount), 9);
    }

    [Fact]
    public async Task Imported_readings_are_late_and_never_the_present()
    {
        await using var studio = Tables.Open();
        await studio.Readings(Tables.Of("furnace-1/crown", [(Eight - Seconds(20), 1400), (Eight - Seconds(5), 1500)]));
        Assert.NotEqual(Quality.Good, studio.The<LatestReadings>().QualityOf(studio.Channel("furnace-1/crown"), Eight));
        Assert.Equal(2, studio.Scalar("SELECT count(*) FROM reading WHERE marks & 8 AND marks & 128"));
    }

    [Fact]
    public async Task History_older_than_raw_readings_are_kept_becomes_hours_and_then_lets_its_readings_go()
    {
        await using var studio = Tables.Open();
        var old = Eight - Days(400);
        await studio.Readings(Tables.Of("furnace-1/gas-flow", Steady(2, Seconds(10), old, old + Hours(3))));
        await studio.Move();
        var hours = studio.Hours("furnace-1/gas-flow", old - Days(1), Eight);
        Assert.Equal(6, hours.Sum(h => h.Amount), 9);
        Assert.True(await studio.LetGo() > 1000);
        Assert.Equal(0, studio.Scalar("SELECT count(*) FROM reading"));
        Assert.Equal(hours, studio.Hours("furnace-1/gas-flow", old - Days(1), Eight));

        // The hours are all that is left: rows of a file cannot be added to a sum whose parts are gone.
        var more = Tables.Of("furnace-1/gas-flow", Steady(4, Seconds(10), old, old + Minutes(59)));
        Assert.Equal(355, (await studio.Readings(more)).Closed);
        await studio.Move();
        Assert.Equal(hours, studio.Hours("furnace-1/gas-flow", old - Days(1), Eight));
        Assert.Equal(355, (await studio.Readings(more, replace: true)).Added);
        await studio.Move();
        Assert.Equal(4 * 59 / 60.0, studio.Hours("furnace-1/gas-flow", old - Days(1), Eight)[0].Amount, 9);
    }

    [Fact]
    public async Task A_table_as_a_spreadsheet_of_the_continent_writes_it_is_read()
    {
        await using var studio = Tables.Open();
        const string table = "\uFEFFChannel;Time;Value;Unit\r\nquillmere/furnace-1/crown;2026-03-02 08:30;1148,6;Cel\r\n\r\n\"furnace-1/crown\";2026-03-02 08:31:30,5;\"2100\";[degF]\r\n";
        Assert.Equal(2, (await studio.Readings(table)).Added);
        // 08:30 in Berlin in winter is 07:30 UTC; 2100 °F are 1148.89 °C.
        Assert.Equal((Eight - Minutes(30), 1148.6), studio.Raw("furnace-1/crown")[0]);
        Assert.Equal((2100 - 32) / 1.8, studio.Raw("furnace-1/crown")[1].Value, 9);
    }

    [Theory]
    [InlineData("2026-03-29 02:30", "was skipped")]
    [InlineData("2025-10-26 02:30", "came twice")]
    public async Task A_local_time_that_names_no_moment_or_two_is_not_guessed(string time, string said)
    {
        await using var studio = Tables.Open(now: Eight + Days(60));
        Assert.Contains(said, Assert.Single((await studio.Readings($"channel,time,value\nfurnace-1/crown,{time},1100\n")).Problems).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_zero_byte_a_broken_letter_and_quotes_are_taken_for_what_they_are()
    {
        await using var studio = Tables.Open();
        byte[] table = [.. Encoding.UTF8.GetBytes("channel,time,value\nfurnace-1/cro\0wn,2026-03-02T07:00:00Z,1\nfurnace-1/"), 0xE4, .. Encoding.UTF8.GetBytes(",2026-03-02T07:00:00Z,1\n\"fur\"\"nace\n-1\",2026-03-02T07:00:00Z,1\nfurnace-1/crown,2026-03-02T07:00:00Z,=1+1\n")];
        var report = await studio.Import("readings", table);
        Assert.Equal([(2L, "zero byte"), (3L, "not UTF-8"), (4L, "no channel"), (6L, "no number")],
            report.Problems.Zip(["zero byte", "not UTF-8", "no channel", "no number"], (p, said) => (p.Line, p.Reason.Contains(said, StringComparison.Ordinal) ? said : p.Reason)));
    }

    [Theory]
    [InlineData("", "the file is empty")]
    [InlineData("time,value\n", "'channel' is missing")]
    [InlineData("channel,time,value,value\n", "'value' is there twice")]
    [InlineData("channel,time,value,colour\n", "'colour' is unknown")]
    public async Task A_header_that_is_none_is_said_at_once(string table, string said)
    {
        await using var studio = Tables.Open();
        Assert.Contains(said, (await Assert.ThrowsAsync<CsvFileException>(() => studio.Readings(table))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_quote_that_never_closes_ends_the_import_and_not_the_memory()
    {
        await using var studio = Tables.Open();
        var table = "channel,time,value\n\"furnace-1/crown,2026-03-02T07:00:00Z,1\n" + string.Concat(Enumerable.Repeat("furnace-1/crown,2026-03-02T07:00:00Z,1\n", 20_000));
        Assert.Contains("quote is probably not closed", (await Assert.ThrowsAsync<CsvFileException>(() => studio.Readings(table))).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_compressed_table_is_read_and_one_that_is_cut_off_imports_nothing()
    {
        await using var studio = Tables.Open();
        using var packed = new MemoryStream();
        using (var zip = new GZipStream(packed, CompressionLevel.Fastest, leaveOpen: true)) zip.Write(Encoding.UTF8.GetBytes(Tables.Of("furnace-1/gas-flow", Wavy(Eight - Hours(9), Eight))));
        var whole = packed.ToArray();
        await Assert.ThrowsAsync<CsvFileException>(() => studio.Import("readings", whole[..(whole.Length / 2)]));
        Assert.Equal(0, studio.Scalar("SELECT count(*) FROM reading"));
        Assert.Equal(9 * 360 + 1, (await studio.Import("readings", whole)).Added);
    }

    [Fact]
    public async Task An_export_comes_back_to_the_last_bit()
    {
        // The crown is corrected: its readings are kept as they came and as they count.
        await using var studio = Tables.Open(SomeStudio.With("furnace-1", "crown", c => c with { Calibrations = [new() { From = "2026-01-01", Points = [new() { Reading = "1100 °C", Correction = "-2.7 K" }] }] }));
        var random = new Random(5);
        await studio.Send("furnace-1/crown", Every(Seconds(10), Eight, Eight + Hours(1)).Select(at => (at + Duration.FromTicks(10 * random.Next(1_000_000)), 1100 + random.NextDouble() * 50)));
        await studio.Send("furnace-1/terminal", Steady(28.123456789, Seconds(10), Eight, Eight + Hours(1)));
        await studio.Send("furnace-1/couple", Every(Seconds(10), Eight, Eight + Hours(1)).Select(at => (at, 11 + random.NextDouble() / 3)));
        await studio.Send("furnace-1/door", Every(Minutes(5), Eight, Eight + Hours(1)).Select((at, i) => (at, (double)(i % 2))));
        await studio.Move();
        await using var second = Tables.Open(now: studio.Now);
        await second.Import("readings", studio.ExportReadings(isCompressed: true));
        Assert.Equal(Rows(studio), Rows(second));
        Assert.Equal(Encoding.UTF8.GetString(studio.ExportReadings()), Encoding.UTF8.GetString(second.ExportReadings()));
    }

    static List<(string, string, long, double)> Rows(OpenStudio studio)
    {
        using var connection = studio.Store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT channel, unit, at, value FROM (SELECT series, at, value FROM reading UNION ALL SELECT series, at, value FROM arrival) r JOIN series s ON s.id = r.series ORDER BY 1, 2, 3";
        using var rows = command.ExecuteReader();
        var all = new List<(string, string, long, double)>();
        while (rows.Read()) all.Add((rows.GetString(0), rows.GetString(1), rows.GetInt64(2), rows.GetDouble(3)));
        return all;
    }
}
