using HotShop.Monitor.Configuration;
using HotShop.Monitor.Live;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Logbook;

/// <summary>What became of an entry: the row that holds it (a new one, or the one that was there under the same id), or why it is refused.</summary>
public sealed record LogResult(LogEntry? Entry, bool IsNew, string? Refusal);

/// <summary>The logbook: append-only, the same id is the same entry.</summary>
public sealed class LogbookBook(StudioPlan plan, IStoreWriter writer, IStoreReader store, IEnumerable<ILogbookStage> stages, LiveFeed live) : ILogEntryStage
{
    static readonly Duration FutureTolerance = Duration.FromMinutes(2);
    static readonly Instant Earliest = Instant.FromUtc(2020, 1, 1, 0, 0);
    readonly IReadOnlyList<ILogbookStage> stages = [.. stages];
    long version;

    /// <summary>Grows with each entry: what was computed from an older version is no longer true.</summary>
    public long Version => Volatile.Read(ref version);

    public Task<LogResult> Add(WireLogEntry entry, Instant arrivedAt, CancellationToken stop) =>
        writer.Write(scope => Add(entry, arrivedAt, scope), stop);

    string? ILogEntryStage.Take(WireLogEntry entry, Instant arrivedAt, WriteScope scope) => Add(entry, arrivedAt, scope).Refusal;

    /// <summary>Checks the sense of an entry whose form is right, and keeps it.</summary>
    public LogResult Add(WireLogEntry entry, Instant arrivedAt, WriteScope scope)
    {
        if (plan.Appliance(entry.Appliance) is not { } appliance) return Refuse($"there is no appliance '{entry.Appliance}'");
        var at = (entry.At ?? arrivedAt).Whole();
        if (KeptEntries.Of(entry, at, arrivedAt, scope.Connection) is { } before) return new LogResult(before, false, null);
        if (Problem(entry, appliance, at, arrivedAt, scope.Connection) is { } problem) return Refuse(problem);
        return new LogResult(Insert(entry, at, CorrectedBy(entry), arrivedAt, scope), true, null);

        LogResult Refuse(string reason) => new(null, false, $"log entry {entry.Entry} of {entry.Appliance}: {reason}");
    }

    /// <summary>Why an entry cannot be logged beside those that a connection shows; null: it can.</summary>
    internal static string? Problem(WireLogEntry entry, AppliancePlan appliance, Instant at, Instant arrivedAt, SqliteConnection connection)
    {
        if (TimeProblem(at, arrivedAt) is { } wrong) return $"it says {at}, {wrong}; check the device's clock";
        if (Corrections.MovedTo(entry.Fields) is { } moved && TimeProblem(moved, arrivedAt) is { } wrongMove) return $"it moves the entry to {moved}, {wrongMove}";
        return CorrectedBy(entry) is null
            ? LogSense.Problem(entry, appliance) ?? MeterSense.Problem(entry, at, appliance, connection)
            : CorrectionSense.Problem(entry, appliance, connection);
    }

    static string? CorrectedBy(WireLogEntry entry) => entry.Entry == "correction" ? entry.Fields["of"]!.GetValue<string>() : null;

    static string? TimeProblem(Instant at, Instant arrivedAt) =>
        at > arrivedAt + FutureTolerance ? "which is in the future" : at < Earliest ? "which is before there was anything to log" : null;

    LogEntry Insert(WireLogEntry entry, Instant at, string? corrects, Instant arrivedAt, WriteScope scope)
    {
        var id = entry.Id ?? entry.Delivery?.IdAt(arrivedAt) ?? $"at-{at.ToMicroseconds()}-{Guid.NewGuid():N}"[..40];
        using var command = scope.Command("""
            INSERT INTO log_entry (id, appliance, entry, at, who, fields, corrects, arrived)
            VALUES ($id, $appliance, $entry, $at, $who, $fields, $corrects, $arrived) RETURNING seq
            """,
            ("$id", id), ("$appliance", entry.Appliance), ("$entry", entry.Entry), ("$at", at.ToMicroseconds()), ("$who", entry.Who),
            ("$fields", entry.Fields.ToJsonString()), ("$corrects", corrects), ("$arrived", arrivedAt.ToMicroseconds()));
        var kept = new LogEntry((long)command.ExecuteScalar()!, id, entry.Appliance, entry.Entry, at, entry.Who, entry.Fields, arrivedAt);
        foreach (var stage in stages) stage.React(kept, scope);
        scope.OnCommit(() =>
        {
            Interlocked.Increment(ref version);
            live.Publish(new LiveEvent("log", kept.Id, kept));
        });
        return kept;
    }

    /// <summary>Whether there is an entry of that id.</summary>
    public bool Has(string id)
    {
        using var connection = store.Open();
        return LogRows.WithCorrections(connection, id).Any(e => e.Id == id);
    }

    /// <summary>Time of the first entry there is: before it, nobody said what the studio did. Null while the logbook is empty.</summary>
    public Instant? FirstAt()
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT min(at) FROM log_entry";
        return command.ExecuteScalar() is long micros ? Columns.FromMicroseconds(micros) : null;
    }

    /// <summary>Entries in [from, to) in the order of their time; those that were corrected away are there too, with their corrections.</summary>
    public IReadOnlyList<LogEntry> Entries(string? appliance, Instant from, Instant to, int most = 100_000)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            SELECT * FROM (SELECT {LogRows.Columns} FROM log_entry
            WHERE at >= $from AND at < $to AND ($appliance IS NULL OR appliance = $appliance) ORDER BY at DESC, seq DESC LIMIT $most) ORDER BY at, seq
            """;
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        command.Parameters.AddWithValue("$appliance", (object?)appliance ?? DBNull.Value);
        command.Parameters.AddWithValue("$most", most);
        using var rows = command.ExecuteReader();
        var entries = new List<LogEntry>();
        while (rows.Read()) entries.Add(LogRows.Read(rows));
        return entries;
    }

    /// <summary>Entries of some kinds alone, of all appliances, in [from, to) and after corrections: years of repairs without years of gathers.</summary>
    public IReadOnlyList<LogEntry> InForce(IReadOnlyCollection<string> kinds, Instant from, Instant to)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        var names = string.Join(", ", kinds.Append("correction").Select((kind, i) =>
        {
            command.Parameters.AddWithValue($"$kind{i}", kind);
            return $"$kind{i}";
        }));
        command.CommandText = $"SELECT {LogRows.Columns} FROM log_entry WHERE at >= $from AND at < $to AND entry IN ({names}) ORDER BY at, seq";
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        using var rows = command.ExecuteReader();
        var entries = new List<LogEntry>();
        while (rows.Read()) entries.Add(LogRows.Read(rows));
        return Corrections.Apply(entries);
    }

    /// <summary>What holds after corrections: corrected entries carry the new fields, or are gone where the correction brings none.</summary>
    public IReadOnlyList<LogEntry> InForce(string appliance, Instant from, Instant to) => Corrections.Apply(Entries(appliance, from, to));
}
