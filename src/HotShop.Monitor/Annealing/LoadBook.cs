using System.Collections.Immutable;
using System.Text.Json;
using HotShop.Monitor.Store;
using HotShop.Physics.Annealing;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Annealing;

/// <summary>All loads, newest start first. Append-only; a later load of the same annealer ends the one before.</summary>
sealed class LoadBook : IAnnealingCurves
{
    readonly IStoreWriter writer;
    volatile ImmutableList<AnnealerLoad> loads;

    public LoadBook(IStoreReader store, IStoreWriter writer)
    {
        this.writer = writer;
        using var connection = store.Open();
        loads = [.. Read(connection).OrderByDescending(l => l.Curve.StartsAt)];
    }

    public IReadOnlyList<AnnealerLoad> All => loads;

    public AnnealerLoad? Find(string id) => loads.Find(l => l.Id == id);

    /// <summary>When nothing of it lies in the annealer any more: its curve is done, or the next load has begun.</summary>
    public Instant ClosesAt(AnnealerLoad load)
    {
        var next = loads.FindLast(l => l.Appliance == load.Appliance && l.Curve.StartsAt > load.Curve.StartsAt);
        return next is null ? load.Curve.EndsAt : Instant.Min(load.Curve.EndsAt, next.Curve.StartsAt);
    }

    public AnnealingCurve? For(string appliance, Instant at)
    {
        var load = loads.Find(l => l.Appliance == appliance && l.Curve.StartsAt <= at);
        return load is not null && at <= load.Curve.EndsAt ? load.Curve : null;
    }

    /// <returns>The load that is kept; the one before under the same id, where there was one.</returns>
    public Task<(AnnealerLoad Load, bool IsNew)> Add(AnnealerLoad load, CancellationToken stop) => writer.Write(scope =>
    {
        if (Find(load.Id) is { } before) return (before, false);
        scope.Execute("INSERT INTO annealing_load (id, appliance, name, start_at, start_celsius, stages, written_at) VALUES ($id, $appliance, $name, $start, $celsius, $stages, $now)",
            ("$id", load.Id), ("$appliance", load.Appliance), ("$name", load.Name), ("$start", load.Curve.StartsAt.ToMicroseconds()), ("$celsius", load.Curve.StartCelsius),
            ("$stages", JsonSerializer.Serialize(load.Stages, JsonSerializerOptions.Web)), ("$now", scope.Now.ToMicroseconds()));
        var were = loads;
        scope.OnRollback(() => loads = were);
        var place = were.FindIndex(l => l.Curve.StartsAt <= load.Curve.StartsAt);
        loads = place < 0 ? were.Add(load) : were.Insert(place, load);
        return (load, true);
    }, stop);

    static IEnumerable<AnnealerLoad> Read(SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        // Of two with the same start the later typed holds.
        command.CommandText = "SELECT id, appliance, name, start_at, start_celsius, stages FROM annealing_load ORDER BY seq DESC";
        using var rows = command.ExecuteReader();
        while (rows.Read())
        {
            var stages = JsonSerializer.Deserialize<List<StageText>>(rows.GetString(5), JsonSerializerOptions.Web)!;
            yield return new AnnealerLoad(rows.GetString(0), rows.GetString(1), rows.GetString(2),
                new AnnealingCurve(rows.GetInstant(3), rows.GetDouble(4), [.. stages.Select(s => s.Stage())]), stages);
        }
    }
}
