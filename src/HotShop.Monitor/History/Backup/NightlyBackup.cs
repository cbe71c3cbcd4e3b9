using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;
using Quartz;

namespace HotShop.Monitor.History.Backup;

/// <summary>Makes a backup each night and keeps the newest: calendar work, so Quartz calls it; at a start as well, where last night's was missed.</summary>
[DisallowConcurrentExecution]
sealed partial class NightlyBackup(StudioPlan plan, StudioStore store, IStoreWriter writer, HealthBoard health, TimeProvider clock, ILogger<NightlyBackup> log) : IJob
{
    /// <summary>Ten past three in the studio's zone, before old rows are let go.</summary>
    public const string At = "0 10 3 * * ?";

    /// <summary>One that is younger need not be made again at a start.</summary>
    static readonly Duration young = Duration.FromHours(20);

    const string DoneFact = "backup-done";

    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) => await Run(clock.GetUtcNow().ToInstant(), cancellationToken);

    /// <returns>The file, or null where none is due or set up, or it failed.</returns>
    public async Task<string?> Run(Instant now, CancellationToken stop)
    {
        if (plan.Configuration.Backup.Folder is not { } named)
        {
            health.Report(HealthBoard.Backup, true, "no backups are made: name a folder on another disk in backup.folder", now, isSetUp: false);
            return null;
        }
        var last = Done();
        if (last is { } done && now - done < young)
        {
            Say(done, now);
            return null;
        }
        try
        {
            var folder = Directory.CreateDirectory(Path.GetFullPath(named, plan.BaseDirectory)).FullName;
            var path = Path.Combine(folder, $"hotshop-{plan.Site}-{LocalDatePattern.Iso.Format(now.InZone(plan.Zone).Date)}.db");
            // Beside the writer, on a thread of its own: minutes of a large store must hold up nobody.
            await Task.Run(() => StoreCopy.Make(store.Path, path, plan.Site, now), stop);
            await writer.Write(scope => scope.Execute("INSERT OR REPLACE INTO fact VALUES ($name, $at)", ("$name", DoneFact), ("$at", InstantPattern.ExtendedIso.Format(now))), stop);
            LetGo(folder);
            Say(now, now);
            return path;
        }
        catch (Exception failure) when (failure is StoreException or IOException or UnauthorizedAccessException)
        {
            Failed(failure);
            var since = last is { } before ? $"the last good one is of {before.InZone(plan.Zone).Date:uuuu'-'MM'-'dd}" : "there is none yet";
            health.Report(HealthBoard.Backup, false, $"last night's backup failed: {failure.Message.TrimEnd('.')}; {since}", now);
            return null;
        }
    }

    void Say(Instant done, Instant now) =>
        health.Report(HealthBoard.Backup, true, string.Create(CultureInfo.InvariantCulture, $"last backup {done.InZone(plan.Zone):uuuu'-'MM'-'dd HH':'mm}, {plan.Configuration.Backup.Keep} are kept in {plan.Configuration.Backup.Folder}"), now);

    Instant? Done()
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT value FROM fact WHERE name = $name";
        command.Parameters.AddWithValue("$name", DoneFact);
        return command.ExecuteScalar() is string text && InstantPattern.ExtendedIso.Parse(text) is { Success: true } at ? at.Value : null;
    }

    /// <summary>The oldest of ours, by the day in their name; what other files lie there is nobody's business.</summary>
    void LetGo(string folder)
    {
        var start = $"hotshop-{plan.Site}-";
        var ours = Directory.EnumerateFiles(folder, $"{start}*.db")
            .Where(f => LocalDatePattern.Iso.Parse(Path.GetFileNameWithoutExtension(f)[start.Length..]).Success)
            .OrderByDescending(f => f, StringComparer.Ordinal);
        foreach (var old in ours.Skip(plan.Configuration.Backup.Keep)) File.Delete(old);
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The nightly backup failed; the next night tries again")]
    private partial void Failed(Exception failure);
}
