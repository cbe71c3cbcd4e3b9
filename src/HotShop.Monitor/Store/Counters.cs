namespace HotShop.Monitor.Store;

/// <summary>Counts kept in the store, for what must not go unnoticed: duplicates, conflicts, refusals, late readings.</summary>
public static class Counters
{
    public const string
        Redelivered = "redelivered", Duplicate = "duplicate", Conflict = "conflict", Refused = "refused", Late = "late",
        ImpossibleTime = "impossible-time", TooOld = "too-old", RetainedWithoutTime = "retained-without-time", UnitChanged = "unit-changed";

    public static void Count(this WriteScope scope, string name, long by = 1) =>
        scope.Execute("INSERT INTO counter VALUES ($name, $by) ON CONFLICT (name) DO UPDATE SET count = count + $by", ("$name", name), ("$by", by));

    public static IReadOnlyDictionary<string, long> Read(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT name, count FROM counter";
        using var rows = command.ExecuteReader();
        var counts = new SortedDictionary<string, long>(StringComparer.Ordinal);
        while (rows.Read()) counts[rows.GetString(0)] = rows.GetInt64(1);
        return counts;
    }
}
