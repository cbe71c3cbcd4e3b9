using System.Text;
using System.Text.Json.Nodes;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.History;

/// <summary>The logbook out of a table, and into one: nothing twice, nothing rewritten, and no cell that a spreadsheet would run.</summary>
public sealed class LogbookImportTests
{
    static readonly Instant Eight = OpenStudio.Start;

    static IReadOnlyList<LogEntry> All(OpenStudio studio) => studio.Logbook.Entries(null, Eight - Days(900), studio.Now + Days(1));

    [Fact]
    public async Task A_table_typed_by_a_person_is_logged_once_however_often_it_is_imported()
    {
        await using var studio = Tables.Open();
        const string table = """
            appliance,entry,time,who,count,size,mass,unit,material,text,more
            furnace-1,gather,2026-03-01 10:00,Ada,2,medium,,,,,
            furnace-1,gather,2026-03-01 10:00,Ada,2,medium,,,,,
            furnace-1,charge,2026-03-01 18:00,Bo,,,45,kg,cullet,,
            furnace-1,tally,2026-03-01 17:30,,,,,,,,"{""gathers"":{""small"":12,""large"":3}}"
            annealer-1,note,2026-03-01 19:00,Bo,,,,,,"door hums, a little",
            """;
        Assert.Equal(5, (await studio.Import("logbook", table)).Added);
        Assert.Equal(5, (await studio.Import("logbook", table)).Known);
        var entries = All(studio);
        Assert.Equal(5, entries.Count);
        Assert.Equal(4, entries.Where(e => e.Entry == "gather").Sum(e => e.Fields["count"]!.GetValue<double>()));
        Assert.Equal("door hums, a little", entries.Single(e => e.Entry == "note").Fields["text"]!.GetValue<string>());
    }

    [Fact]
    public async Task One_bad_row_and_nothing_is_logged()
    {
        await using var studio = Tables.Open();
        var report = await studio.Import("logbook", """
            id,appliance,entry,time,count,size,of,mode
            a,furnace-1,gather,2026-03-01T10:00:00Z,2,medium,,
            b,furnace-1,gather,2026-03-01T10:00:00Z,2,enormous,,
            c,furnace-9,gather,2026-03-01T10:00:00Z,2,medium,,
            d,furnace-1,gather,2026-03-01T10:00:00Z,two,medium,,
            e,furnace-1,correction,2026-03-01T11:00:00Z,3,,a,
            f,furnace-1,correction,2026-03-01T11:00:00Z,3,,nobody,
            g,annealer-1,mode,2026-03-01T11:00:00Z,,,,hot
            """);
        Assert.Equal([3L, 4, 5, 7, 8], report.Problems.Select(p => p.Line));
        Assert.Empty(All(studio));
    }

    [Fact]
    public async Task The_logbook_is_never_rewritten()
    {
        await using var studio = Tables.Open();
        await studio.Import("logbook", "id,appliance,entry,time,text\na,furnace-1,note,2026-03-01T10:00:00Z,first\n");
        var second = await studio.Import("logbook", "id,appliance,entry,time,text\na,furnace-1,note,2026-03-01T10:00:00Z,second\n");
        Assert.Contains("says something else", Assert.Single(second.ConflictList).Reason, StringComparison.Ordinal);
        Assert.Equal("first", Assert.Single(All(studio)).Fields["text"]!.GetValue<string>());
        await Assert.ThrowsAsync<CsvFileException>(() => studio.Import("logbook", "id,appliance,entry,time,text\n", replace: true));
    }

    [Theory]
    [InlineData("=HYPERLINK(\"https://evil.example\")"), InlineData("+1"), InlineData("-1 and more"), InlineData("@SUM(A1)"), InlineData("'=quoted"), InlineData("'twas fine"), InlineData("plain, with \"quotes\" and\nlines")]
    public async Task A_text_that_a_spreadsheet_would_run_is_harmless_in_the_file_and_itself_again_after(string text)
    {
        await using var studio = Tables.Open();
        await studio.Logbook.Add(new WireLogEntry("furnace-1", "note", "n1", text[..1] + "who", Eight, new JsonObject { ["text"] = text }), Eight, CancellationToken.None);
        var file = studio.ExportLogbook();
        foreach (var cell in Encoding.UTF8.GetString(file).Split('\n')[1].Split(','))
            Assert.DoesNotContain(cell.TrimStart('"')[..Math.Min(1, cell.TrimStart('"').Length)], new[] { "=", "+", "-", "@" });
        await using var second = Tables.Open();
        Assert.Equal(1, (await second.Import("logbook", file)).Added);
        Assert.Equal(text, Assert.Single(All(second)).Fields["text"]!.GetValue<string>());
        Assert.Equal(text[..1] + "who", Assert.Single(All(second)).Who);
    }

    [Fact]
    public async Task A_logbook_comes_back_with_its_corrections_and_gives_the_same_pot()
    {
        await using var studio = Tables.Open();
        WireLogEntry[] entries =
        [
            new("furnace-1", "charge", "c1", "Bo", Eight - Hours(20), new() { ["material"] = "cullet", ["mass"] = 45.25, ["unit"] = "kg" }),
            new("furnace-1", "gather", "g1", null, Eight - Hours(5), new() { ["size"] = "large", ["count"] = 7 }),
            new("furnace-1", "tally", "t1", "Ada", Eight - Hours(1), new() { ["gathers"] = new JsonObject { ["small"] = 4 }, ["from"] = "2026-03-02T03:00:00Z" }),
            new("furnace-1", "correction", "k1", "Bo", Eight - Hours(1), new() { ["of"] = "c1", ["mass"] = 54.5 }),
            new("furnace-1", "correction", "k2", "Bo", Eight - Minutes(30), new() { ["of"] = "g1" }),
            new("furnace-1", "dip", "d1", "Ada", Eight - Minutes(10), new() { ["rimToGlass"] = 12.5, ["unit"] = "cm" }),
            new("annealer-1", "mode", "m1", "Ada", Eight - Minutes(5), new() { ["mode"] = "working" }),
        ];
        foreach (var entry in entries) Assert.Null((await studio.Logbook.Add(entry, Eight, CancellationToken.None)).Refusal);
        await using var second = Tables.Open();
        Assert.Equal(7, (await second.Import("logbook", studio.ExportLogbook())).Added);
        Assert.Equal(All(studio).Select(e => (e.Id, e.Appliance, e.Entry, e.At, e.Who, Sorted(e.Fields))), All(second).Select(e => (e.Id, e.Appliance, e.Entry, e.At, e.Who, Sorted(e.Fields))));
        Assert.Equal(studio.Pot().State.MassKilograms, second.Pot().State.MassKilograms);
    }

    static string Sorted(JsonObject fields) => string.Join(' ', fields.OrderBy(f => f.Key, StringComparer.Ordinal).Select(f => $"{f.Key}={f.Value?.ToJsonString()}"));
}
