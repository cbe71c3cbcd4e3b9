using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Support;
using Microsoft.Data.Sqlite;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Store;

/// <summary>The writer and the file: what fails is undone exactly, said, and gone when it is mended.</summary>
public sealed class StoreTests : IAsyncDisposable
{
    readonly OpenStudio studio = OpenStudio.Open();

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    /// <summary>Everything that the memory beside the rows decides, as seen from outside.</summary>
    async Task<string> Picture()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, OpenStudio.Start));
        return string.Join(" ", studio.Raw("furnace-1/crown"), studio.Hours("furnace-1/crown").Count, studio.The<LatestReadings>().Of(studio.Channel("furnace-1/crown")),
            studio.The<SeriesBook>().All.Count, string.Join(",", studio.Hours("furnace-1/crown")));
    }

    [Fact]
    public async Task A_piece_that_throws_does_not_disturb_its_neighbours()
    {
        var work = Enumerable.Range(0, 50).Select(i => studio.Writer.Write(scope =>
        {
            scope.Execute("INSERT INTO fact VALUES ($name, 'x')", ("$name", $"n{i}"));
            return i % 10 == 3 ? throw new InvalidOperationException($"{i}") : i;
        }, Stop)).ToList();
        for (var i = 0; i < 50; i++)
        {
            if (i % 10 == 3) Assert.Equal($"{i}", (await Assert.ThrowsAsync<InvalidOperationException>(() => work[i])).Message);
            else Assert.Equal(i, await work[i]);
        }
        Assert.Equal(45, studio.Scalar("SELECT count(*) FROM fact"));
        Assert.True(studio.Health.IsWorking(HealthBoard.Store));
    }

    [Fact]
    public async Task A_piece_that_is_undone_undoes_what_it_changed_in_memory_and_nothing_else()
    {
        var order = new List<string>();
        var good = studio.Writer.Write(scope => { scope.OnRollback(() => order.Add("good undone")); scope.OnCommit(() => order.Add("good told")); }, Stop);
        var bad = studio.Writer.Write(scope =>
        {
            scope.OnCommit(() => order.Add("bad told"));
            scope.OnRollback(() => order.Add("first"));
            scope.OnRollback(() => order.Add("second"));
            throw new InvalidOperationException("a defect");
        }, Stop);
        await good;
        await Assert.ThrowsAsync<InvalidOperationException>(() => bad);
        Assert.Equal(["second", "first"], order.Where(o => o != "good told"));
        Assert.Contains("good told", order);
    }

    [Fact]
    public async Task A_page_that_trips_over_news_ends_neither_the_writer_nor_the_sender()
    {
        Assert.Equal(7, await studio.Writer.Write(scope => { scope.OnCommit(() => throw new InvalidOperationException("a defect")); return 7; }, Stop));
        await studio.Send("furnace-1/crown", "1150");
        Assert.Single(studio.Raw("furnace-1/crown"));
        Assert.Single(studio.Errors);
    }

    [Fact]
    public async Task A_full_disk_rolls_back_exactly_frees_the_ballast_says_so_and_heals()
    {
        await studio.Send("furnace-1/crown", Steady(1150, Seconds(10), OpenStudio.Start, OpenStudio.Start + Minutes(2)));
        studio.Now = OpenStudio.Start + Hours(1);
        var before = await Picture();
        var ballast = Path.Combine(studio.Plan.DataDirectory, "ballast");
        Assert.Equal(1 << 20, new FileInfo(ballast).Length);
        var free = studio.Scalar("PRAGMA page_count");
        await studio.Writer.Write(scope => scope.Execute($"PRAGMA max_page_count = {free}"), Stop);

        // New series, new hours and far more rows than fit in the pages that are left.
        var refused = Enumerable.Range(0, 3_000).Select(i => studio.Send("furnace-1/gas-flow", OpenStudio.Timed(i % 100, OpenStudio.Start + Seconds(i)))).ToList();
        var failed = 0;
        foreach (var send in refused)
        {
            try { await send; }
            catch (StoreException) { failed++; }
        }
        Assert.True(failed > 0);
        await Assert.ThrowsAsync<StoreException>(() => studio.Writer.Write(scope => scope.Execute("INSERT INTO fact VALUES ('big', hex(randomblob(1000000)))"), Stop));
        Assert.False(studio.Health.IsWorking(HealthBoard.Store));
        Assert.False(studio.Health.IsWorking(HealthBoard.Disk));
        Assert.Contains("ballast", studio.Health.Of(HealthBoard.Disk)!.Detail, StringComparison.Ordinal);
        Assert.False(File.Exists(ballast));

        var kept = studio.Raw("furnace-1/gas-flow").Count;
        Assert.Equal(3_000 - failed, kept);
        await studio.Writer.Write(scope => scope.Execute("PRAGMA max_page_count = 1073741823"), Stop);
        await Task.WhenAll(Enumerable.Range(0, 3_000).Select(i => studio.Send("furnace-1/gas-flow", OpenStudio.Timed(i % 100, OpenStudio.Start + Seconds(i)))));
        Assert.Equal(3_000, studio.Raw("furnace-1/gas-flow").Count);
        Assert.Equal(0, studio.Count(Counters.Conflict));
        Assert.Equal(studio.Scalar("SELECT count(*) FROM arrival"), studio.Scalar("SELECT max(seq) FROM arrival"));
        Assert.True(studio.Health.IsWorking(HealthBoard.Store));
        Assert.Equal(before, (await Picture()).Replace(" 2 ", " 1 ", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_commit_that_fails_leaves_memory_as_it_was()
    {
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1150, OpenStudio.Start));
        var before = await Picture();
        await studio.Writer.Write(scope => scope.Execute("PRAGMA query_only = ON"), Stop);
        await Assert.ThrowsAsync<StoreException>(() => studio.Send("furnace-1/crown", OpenStudio.Timed(1151, OpenStudio.Start + Hours(1))));
        await Assert.ThrowsAsync<StoreException>(() => studio.Send("furnace-1/gas-flow", OpenStudio.Timed(6, OpenStudio.Start)));
        await studio.Restart();
        Assert.Equal(before, await Picture());
        await studio.Send("furnace-1/crown", OpenStudio.Timed(1151, OpenStudio.Start + Hours(1)));
        Assert.Equal(2, studio.Raw("furnace-1/crown").Count);
    }

    [Fact]
    public async Task Work_that_waits_when_the_service_stops_is_still_done()
    {
        var work = Enumerable.Range(0, 2_500).Select(i => studio.Send("furnace-1/crown", OpenStudio.Timed(i % 1400, OpenStudio.Start + Seconds(i)))).ToList();
        await studio.Restart();
        await Task.WhenAll(work);
        Assert.Equal(2_500, studio.Raw("furnace-1/crown").Count);
    }

    [Fact]
    public async Task After_the_end_a_sender_is_told_to_send_again()
    {
        var writer = studio.Writer;
        await studio.Restart();
        await Assert.ThrowsAsync<StoreException>(async () => await writer.Write(_ => true, Stop));
    }

    [Fact]
    public async Task Practice_32_a_reader_that_holds_on_lets_the_log_grow_only_while_it_holds()
    {
        using (var reader = studio.Store.Open())
        {
            using var hold = reader.CreateCommand();
            hold.CommandText = "BEGIN; SELECT count(*) FROM arrival;";
            hold.ExecuteScalar();
            for (var round = 0; round < 12; round++)
                await studio.Writer.Write(scope => scope.Execute("INSERT OR REPLACE INTO fact VALUES ('big', hex(randomblob(2000000)))"), Stop);
            Assert.True(studio.Store.Sizes().Log > 34 << 20, $"{studio.Store.Sizes().Log}");
            hold.CommandText = "COMMIT";
            hold.ExecuteNonQuery();
        }
        for (var round = 0; round < 4; round++) await studio.Send("furnace-1/crown", OpenStudio.Timed(1150 + round, studio.Now + Seconds(round)));
        Assert.True(studio.Store.Sizes().Log <= 33_554_432 + 8192, $"{studio.Store.Sizes().Log}");
    }

    [Fact]
    public void A_second_service_on_the_same_store_is_refused_in_one_line() =>
        Assert.Contains("another hotshop", Refusal(() => StudioStore.Open(studio.Plan, isDemo: false)), StringComparison.Ordinal);

    [Fact]
    public void A_real_service_refuses_a_demo_s_store_and_the_other_way_round()
    {
        using var folder = new TestFolder();
        var plan = folder.Plan();
        StudioStore.Open(plan, isDemo: true).Dispose();
        Assert.Contains("invented", Refusal(() => StudioStore.Open(plan, isDemo: false)), StringComparison.Ordinal);
        StudioStore.Open(plan, isDemo: true).Dispose();
        using var real = new TestFolder();
        using (var store = StudioStore.Open(real.Plan(), isDemo: false)) store.KeepConfiguration("{}", OpenStudio.Start);
        Assert.Contains("real studio", Refusal(() => StudioStore.Open(real.Plan(), isDemo: true)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_store_of_a_newer_program_is_refused_in_one_line()
    {
        using var folder = new TestFolder();
        var plan = folder.Plan();
        StudioStore.Open(plan, isDemo: false).Dispose();
        folder.Run("INSERT INTO SchemaVersions (ScriptName, Applied) VALUES ('9999-from-the-future.sql', '2030-01-01')");
        Assert.Contains("newer hotshop (step 9999-from-the-future.sql)", Refusal(() => StudioStore.Open(plan, isDemo: false)), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_an_upgrade_a_copy_is_made_and_a_failed_step_leaves_the_store_as_it_was()
    {
        using var folder = new TestFolder();
        var plan = folder.Plan();
        StudioStore.Open(plan, isDemo: false).Dispose();
        // As if an earlier program had made it, with a table that stands in the way of the step.
        var step = folder.Text("SELECT max(ScriptName) FROM SchemaVersions");
        folder.Run($"DELETE FROM SchemaVersions WHERE ScriptName = '{step}'");
        Assert.Contains($"step {step} failed", Refusal(() => StudioStore.Open(plan, isDemo: false)), StringComparison.Ordinal);
        Assert.True(File.Exists($"{folder.Database}.before-{Path.GetFileNameWithoutExtension(step)}"));
        Assert.NotEqual(step, folder.Text("SELECT max(ScriptName) FROM SchemaVersions"));
    }

    [Fact]
    public void A_file_that_is_no_database_is_refused_in_one_line()
    {
        using var folder = new TestFolder();
        File.WriteAllText(folder.Database, string.Concat(Enumerable.Repeat("this is a letter, not a database. ", 100)));
        Assert.Contains("cannot be opened", Refusal(() => StudioStore.Open(folder.Plan(), isDemo: false)), StringComparison.Ordinal);
        Assert.Contains("cannot be opened", Refusal(() => StudioStore.Open(folder.Plan(), isDemo: false)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_configuration_is_kept_when_it_changes_and_only_then()
    {
        using var folder = new TestFolder();
        using (var store = StudioStore.Open(folder.Plan(), isDemo: false))
            foreach (var (json, day) in new[] { ("a", 1), ("a", 2), ("b", 3), ("b", 4), ("a", 5) }) store.KeepConfiguration(json, OpenStudio.Start + Days(day));
        Assert.Equal("a,b,a", folder.Text("SELECT group_concat(json) FROM (SELECT json FROM configuration ORDER BY valid_from)"));
    }

    static string Refusal(Action open)
    {
        var message = Assert.Throws<StoreException>(open).Message;
        Assert.DoesNotContain('\n', message);
        return message;
    }

    sealed class TestFolder : IDisposable
    {
        readonly string path = Directory.CreateTempSubdirectory("hotshop-store-").FullName;

        public string Database => Path.Combine(path, "hotshop.db");

        public StudioPlan Plan() => PlanBuilder.Build(SomeStudio.Configuration with { DataDirectory = path }, path);

        public void Run(string sql)
        {
            using var connection = new SqliteConnection($"Data Source={Database};Pooling=False");
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            command.ExecuteNonQuery();
        }

        public string Text(string sql)
        {
            using var connection = new SqliteConnection($"Data Source={Database};Pooling=False");
            connection.Open();
            using var command = connection.CreateCommand();
            command.CommandText = sql;
            return (string)command.ExecuteScalar()!;
        }

        public void Dispose() => Directory.Delete(path, recursive: true);
    }
}
