using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.History.Backup;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.History;

/// <summary>A copy of a store that runs, and back: the same answers, nothing destroyed, nothing half.</summary>
public sealed class BackupTests : IDisposable
{
    static readonly Instant Eight = OpenStudio.Start;

    readonly string folder = Directory.CreateTempSubdirectory("hotshop-backup-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    string At(string name) => Path.Combine(folder, name);

    static string Database(OpenStudio studio) => Path.Combine(studio.Plan.DataDirectory, StudioStore.FileName);

    [Fact]
    public async Task A_restored_store_gives_the_answers_of_the_first()
    {
        string[] questions =
        [
            "/api/appliances", "/api/readings?channel=furnace-1/crown&from=2026-03-02T07:00:00Z&to=2026-03-02T11:00:00Z&step=raw", "/api/readings?channel=furnace-1/gas-flow&from=2026-03-02T07:00:00Z&to=2026-03-02T11:00:00Z&step=hour",
            "/api/fuel?appliance=furnace-1&from=2026-03-02T07:00:00Z&to=2026-03-02T11:00:00Z&step=hour", "/api/fuel/per-kilogram?appliance=furnace-1&from=2026-03-01T07:00:00Z&to=2026-03-02T11:00:00Z",
            "/api/pots/furnace-1", "/api/logbook?from=2026-02-01T00:00:00Z&to=2026-03-02T11:00:00Z", "/api/alarms", "/api/alarms/history?from=2026-03-01T00:00:00Z&to=2026-03-02T12:00:00Z",
        ];
        List<string> before = [], after = [];
        var restored = At("restored");
        await using (var first = await TestService.Start(folder: At("first")))
        {
            await first.Send("furnace-1/gas-flow", Steady(2, Seconds(10), Eight, Eight + Hours(2)));
            await first.Send("furnace-1/crown", Steady(1400, Seconds(10), Eight + Hours(1), Eight + Hours(2)));
            Assert.Equal(201, (await first.Log(new { appliance = "furnace-1", entry = "charge", material = "cullet", massKg = 40, time = "2026-03-02T06:00:00Z", id = "c" })).Status);
            Assert.Equal(201, (await first.Log(new { appliance = "furnace-1", entry = "correction", of = "c", massKg = 44, time = "2026-03-02T07:00:00Z", id = "k" })).Status);
            first.Clock.SetUtcNow((Eight + Hours(2)).ToDateTimeOffset());
            await first.Tick();
            await first.Move();
            foreach (var question in questions) before.Add((await first.Get(question)).GetRawText());
            StoreCopy.Make(Path.Combine(first.Plan.DataDirectory, StudioStore.FileName), At("copy.db"), "quillmere", first.Now);
        }
        Assert.Contains("overheat", before[^1], StringComparison.Ordinal);
        MakeReal(At("copy.db"), isDemo: false);
        Assert.Null(StoreReturn.From(At("copy.db"), restored, Eight));
        MakeReal(Path.Combine(restored, StudioStore.FileName), isDemo: true);
        await using (var second = await TestService.Start(folder: restored))
        {
            second.Clock.SetUtcNow((Eight + Hours(2)).ToDateTimeOffset());
            foreach (var question in questions) after.Add((await second.Get(question)).GetRawText());
        }
        Assert.Equal(before, after);
    }

    /// <summary>The service of these tests runs open, as a demo; a demo's store is refused, which has a test of its own.</summary>
    static void MakeReal(string path, bool isDemo)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        StudioStore.Run(connection, isDemo ? "INSERT INTO fact VALUES ('demo', 'yes')" : "DELETE FROM fact WHERE name = 'demo'");
    }

    [Fact]
    public async Task What_was_there_is_kept_with_all_that_was_in_it()
    {
        await using var old = Tables.Open();
        await old.Send("furnace-1/crown", Steady(1100, Seconds(10), Eight, Eight + Hours(1)));
        StoreCopy.Make(Database(old), At("copy.db"), "quillmere", old.Now);
        await old.Send("furnace-1/crown", (Eight + Hours(2), 1234.5));
        var folderOfOld = old.Plan.DataDirectory;
        Assert.Contains("another hotshop runs", Assert.Throws<StoreException>(() => StoreReturn.From(At("copy.db"), folderOfOld, Eight)).Message, StringComparison.Ordinal);
        Assert.Equal(362, old.Raw("furnace-1/crown").Count);
        old.Store.Dispose();
        var kept = StoreReturn.From(At("copy.db"), folderOfOld, Eight)!;
        Assert.Equal(361, Count(Path.Combine(folderOfOld, StudioStore.FileName)));
        Assert.Equal(362, Count(kept));
        await old.Restart();
        Assert.Equal(361, old.Raw("furnace-1/crown").Count);
    }

    static long Count(string path)
    {
        using var connection = new SqliteConnection($"Data Source={path};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT (SELECT count(*) FROM arrival) + (SELECT count(*) FROM reading)";
        return (long)command.ExecuteScalar()!;
    }

    [Fact]
    public async Task A_copy_made_while_readings_pour_in_is_whole_and_holds_up_none()
    {
        await using var studio = Tables.Open();
        await studio.Send("furnace-1/crown", Steady(1100, Seconds(10), Eight - Hours(20), Eight));
        var copying = Task.Run(() => StoreCopy.Make(Database(studio), At("copy.db"), "quillmere", Eight), CancellationToken.None);
        var sent = 0;
        while (!copying.IsCompleted) await studio.Send("furnace-1/crown", (Eight + Seconds(++sent), 1100.0 + sent % 3));
        await copying;
        var label = StoreCopy.Check(At("copy.db"));
        Assert.Equal(("quillmere", Eight, false), (label.Site, label.MadeAt, label.IsDemo));
        Assert.InRange(Count(At("copy.db")), 7201, 7201 + sent);
        Assert.Equal(7201 + sent, studio.Scalar("SELECT count(*) FROM arrival"));
        Assert.Equal([At("copy.db")], Directory.GetFiles(folder));
    }

    [Fact]
    public async Task What_is_no_backup_is_refused_and_the_store_is_as_it_was()
    {
        await using var studio = Tables.Open();
        await studio.Send("furnace-1/crown", Steady(1100, Seconds(10), Eight, Eight + Hours(3)));
        StoreCopy.Make(Database(studio), At("good.db"), "quillmere", Eight);
        var good = File.ReadAllBytes(At("good.db"));
        File.WriteAllText(At("text.db"), "this is no database, however long it may be " + new string('x', 5000));
        File.WriteAllBytes(At("half.db"), good[..(good.Length / 2)]);
        var rotten = good.ToArray();
        rotten.AsSpan(good.Length / 2, 4096).Fill(0xA5);
        File.WriteAllBytes(At("rotten.db"), rotten);
        File.WriteAllBytes(At("newer.db"), good);
        File.WriteAllBytes(At("demo.db"), good);
        foreach (var (name, sql) in new[] { ("newer.db", "INSERT INTO SchemaVersions (ScriptName, Applied) VALUES ('9999-later.sql', '2030-01-01')"), ("demo.db", "INSERT INTO fact VALUES ('demo', 'yes')") })
        {
            using var connection = new SqliteConnection($"Data Source={At(name)};Pooling=False");
            connection.Open();
            StudioStore.Run(connection, sql);
        }
        var target = Directory.CreateDirectory(At("data")).FullName;
        File.WriteAllBytes(Path.Combine(target, StudioStore.FileName), good);
        foreach (var (name, said) in new[] { ("text.db", "no backup"), ("half.db", ""), ("rotten.db", ""), ("newer.db", "newer hotshop"), ("demo.db", "demo"), ("absent.db", "no such file") })
            Assert.Contains(said, Assert.Throws<StoreException>(() => StoreReturn.From(At(name), target, Eight)).Message, StringComparison.Ordinal);
        Assert.Equal([StudioStore.FileName], Directory.GetFiles(target).Select(f => Path.GetFileName(f)).Where(f => f != "hotshop.lock"));
        Assert.Equal(good, File.ReadAllBytes(Path.Combine(target, StudioStore.FileName)));
    }

    [Fact]
    public async Task Each_night_has_its_backup_and_the_oldest_go()
    {
        await using var studio = OpenStudio.Open(SomeStudio.Configuration with { Backup = new() { Folder = At("nights"), Keep = 3 } }, more: c => c.AddSingleton<NightlyBackup>());
        await studio.Send("furnace-1/crown", (Eight, 1100.0));
        Directory.CreateDirectory(At("nights"));
        File.WriteAllText(Path.Combine(At("nights"), "hotshop-quillmere-notes.db"), "mine");
        for (var night = 0; night < 5; night++)
        {
            studio.Now = Eight + Days(night);
            Assert.NotNull(await studio.The<NightlyBackup>().Run(studio.Now, CancellationToken.None));
            // After a start on the same day there is nothing to do.
            Assert.Null(await studio.The<NightlyBackup>().Run(studio.Now + Hours(2), CancellationToken.None));
        }
        Assert.Equal(["hotshop-quillmere-2026-03-04.db", "hotshop-quillmere-2026-03-05.db", "hotshop-quillmere-2026-03-06.db", "hotshop-quillmere-notes.db"],
            Directory.GetFiles(At("nights")).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
        Assert.Contains("last backup 2026-03-06 09:00", studio.Health.Of(HealthBoard.Backup)!.Detail, StringComparison.Ordinal);
        Assert.Equal(Eight + Days(4), StoreCopy.Check(Path.Combine(At("nights"), "hotshop-quillmere-2026-03-06.db")).MadeAt);
    }

    [Fact]
    public async Task A_backup_that_fails_says_so_and_which_one_is_good()
    {
        await using var studio = OpenStudio.Open(SomeStudio.Configuration with { Backup = new() { Folder = At("nights") } }, more: c => c.AddSingleton<NightlyBackup>());
        Assert.NotNull(await studio.The<NightlyBackup>().Run(Eight, CancellationToken.None));
        Directory.Delete(At("nights"), recursive: true);
        File.WriteAllText(At("nights"), "a file where the folder was");
        Assert.Null(await studio.The<NightlyBackup>().Run(Eight + Days(1), CancellationToken.None));
        var health = studio.Health.Of(HealthBoard.Backup)!;
        Assert.False(health.IsWorking);
        Assert.Contains("the last good one is of 2026-03-02", health.Detail, StringComparison.Ordinal);
        Assert.Single(studio.Errors);
    }

    [Fact]
    public async Task Without_a_folder_it_says_that_none_are_made()
    {
        await using var studio = OpenStudio.Open(more: c => c.AddSingleton<NightlyBackup>());
        Assert.Null(await studio.The<NightlyBackup>().Run(Eight, CancellationToken.None));
        Assert.False(studio.Health.Of(HealthBoard.Backup)!.IsSetUp);
    }
}
