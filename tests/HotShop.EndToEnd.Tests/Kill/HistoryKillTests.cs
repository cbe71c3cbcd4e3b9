using System.Globalization;
using System.Text;
using HotShop.Monitor.History.Backup;
using HotShop.Monitor.Tests.Broker;
using Microsoft.Data.Sqlite;
using Xunit;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>The commands themselves, killed with SIGKILL in the middle: the same command again completes what was begun, and nothing half looks whole.</summary>
public sealed class HistoryKillTests : IDisposable
{
    const int Rows = 150_000;

    readonly string folder = Directory.CreateTempSubdirectory("hotshop-history-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    string At(string name) => Path.Combine(folder, name);

    string Write()
    {
        File.WriteAllText(At("hotshop.json"), """
            { "site": "quillmere", "store": { "ballastMebibytes": 1, "rawDays": 3650 },
              "appliances": [ { "id": "furnace-1", "kind": "furnace", "channels": [ { "id": "crown", "quantity": "temperature" } ] } ] }
            """);
        var table = new StringBuilder("channel,time,value\n");
        var start = new DateTime(2026, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        for (var i = 0; i < Rows; i++) table.Append(CultureInfo.InvariantCulture, $"furnace-1/crown,{start.AddSeconds(i * 10):yyyy-MM-dd'T'HH:mm:ss'Z'},{1100 + i % 500 / 10.0}\n");
        File.WriteAllText(At("table.csv"), table.ToString());
        return At("hotshop.json");
    }

    long Stored()
    {
        if (!File.Exists(At("data/hotshop.db"))) return 0;
        using var connection = new SqliteConnection($"Data Source={At("data/hotshop.db")};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE name = 'reading'";
        if ((long)command.ExecuteScalar()! == 0) return 0;
        command.CommandText = "SELECT count(*) FROM reading";
        return (long)command.ExecuteScalar()!;
    }

    [Fact]
    public async Task An_import_that_was_killed_is_completed_by_the_same_command_and_a_backup_that_was_killed_is_none()
    {
        var configuration = Write();
        await using (var import = ServiceProcess.Begin("import", At("table.csv"), "--kind", "readings", "--config", configuration))
        {
            await Patience.Until(() => Stored() > 0 || import.HasEnded, () => import.Said);
            await import.Kill();
        }
        var before = Stored();
        Assert.InRange(before, 1, Rows - 1);
        var (status, again) = await ServiceProcess.ToItsEnd(folder, "import", At("table.csv"), "--kind", "readings", "--config", configuration);
        Assert.True(status == 0, again.Said);
        Assert.Contains(string.Create(CultureInfo.InvariantCulture, $"{Rows - before:N0} added, {before:N0} known already"), again.Said, StringComparison.Ordinal);
        Assert.Equal(Rows, Stored());
        await again.DisposeAsync();

        var backup = At("backup.db");
        await using (var copying = ServiceProcess.Begin("backup", backup, "--config", configuration))
        {
            await Patience.Until(() => File.Exists($"{backup}.part") || copying.HasEnded, () => copying.Said);
            await copying.Kill();
        }
        // Killed in the middle, or a moment late; what has the name is whole.
        if (File.Exists(backup)) StoreCopy.Check(backup);
        else Assert.True(File.Exists($"{backup}.part"));
        var (done, ended) = await ServiceProcess.ToItsEnd(folder, "backup", backup, "--config", configuration);
        Assert.True(done == 0, ended.Said);
        await ended.DisposeAsync();
        Assert.NotNull(StoreCopy.Check(backup).NewestReading);
        Assert.False(File.Exists($"{backup}.part"));
        Assert.Equal(Rows, Stored());
    }
}
