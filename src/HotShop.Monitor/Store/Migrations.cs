using System.Reflection;
using DbUp;
using DbUp.Engine;
using DbUp.Engine.Output;
using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Store;

/// <summary>Brings a store to this program's schema: the folders' <c>Migrations/NNNN-name.sql</c>, in the order of their numbers.</summary>
static class Migrations
{
    /// <exception cref="StoreException">The store is of a newer program, or a step failed (the store is then as it was; a copy lies beside it).</exception>
    public static void Apply(string databasePath)
    {
        var known = Scripts();
        var applied = Applied(databasePath);
        var strange = applied.Except(known.Select(s => s.Name)).ToList();
        if (strange.Count > 0)
            throw new StoreException($"{databasePath}: made by a newer hotshop (step {strange[0]}); install that version, or restore the copy made before its upgrade");
        var due = known.Where(s => !applied.Contains(s.Name)).ToList();
        if (due.Count == 0) return;
        if (applied.Count > 0) CopyBefore(databasePath, due[0].Name);
        var result = DeployChanges.To.SqliteDatabase($"Data Source={databasePath};Pooling=False")
            .WithScripts(due).WithTransactionPerScript().LogTo(new Quiet()).Build().PerformUpgrade();
        if (!result.Successful)
            throw new StoreException($"{databasePath}: step {result.ErrorScript?.Name} failed ({result.Error.Message}); the copy made before lies beside it", result.Error);
    }

    /// <summary>For looking without changing.</summary>
    /// <exception cref="StoreException">The store is of a newer program, or of an older one and not brought up to date yet.</exception>
    public static void RequireUpToDate(string databasePath)
    {
        if (RequireKnown(databasePath) < Scripts().Count)
            throw new StoreException($"{databasePath}: made by an older hotshop; run the service once with this version, which brings it up to date");
    }

    /// <returns>Steps that the store has taken.</returns>
    /// <exception cref="StoreException">The store is of a newer program, or none.</exception>
    public static int RequireKnown(string databasePath)
    {
        try
        {
            var applied = Applied(databasePath);
            if (applied.Count == 0) throw new StoreException($"{databasePath}: this is no store of a studio; name another file");
            if (applied.Except(Scripts().Select(s => s.Name)).FirstOrDefault() is { } strange)
                throw new StoreException($"{databasePath}: made by a newer hotshop (step {strange}); install that version");
            return applied.Count;
        }
        catch (SqliteException cause)
        {
            throw new StoreException($"{databasePath}: it cannot be read as a store ({cause.Message})", cause);
        }
    }

    static List<SqlScript> Scripts()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return [.. assembly.GetManifestResourceNames()
            .Where(name => name.Contains(".Migrations.", StringComparison.Ordinal) && name.EndsWith(".sql", StringComparison.Ordinal))
            .Select(name => (Name: name[(name.IndexOf(".Migrations.", StringComparison.Ordinal) + 12)..], Resource: name))
            .OrderBy(s => s.Name, StringComparer.Ordinal)
            .Select(s => new SqlScript(s.Name, Text(assembly, s.Resource)))];
    }

    static string Text(Assembly assembly, string resource)
    {
        using var reader = new StreamReader(assembly.GetManifestResourceStream(resource)!);
        return reader.ReadToEnd();
    }

    static HashSet<string> Applied(string databasePath)
    {
        using var connection = new SqliteConnection($"Data Source={databasePath};Pooling=False");
        connection.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM sqlite_master WHERE name = 'SchemaVersions'";
        if ((long)command.ExecuteScalar()! == 0) return [];
        command.CommandText = "SELECT ScriptName FROM SchemaVersions";
        using var rows = command.ExecuteReader();
        var names = new HashSet<string>(StringComparer.Ordinal);
        while (rows.Read()) names.Add(rows.GetString(0));
        return names;
    }

    static void CopyBefore(string databasePath, string step)
    {
        var copy = $"{databasePath}.before-{Path.GetFileNameWithoutExtension(step)}";
        using var from = new SqliteConnection($"Data Source={databasePath};Pooling=False");
        using var to = new SqliteConnection($"Data Source={copy};Pooling=False");
        from.Open();
        to.Open();
        from.BackupDatabase(to);
    }

    /// <summary>The steps say nothing while all is well; a failure comes back as the result.</summary>
    sealed class Quiet : IUpgradeLog
    {
        public void LogTrace(string format, params object[] args) { }
        public void LogDebug(string format, params object[] args) { }
        public void LogInformation(string format, params object[] args) { }
        public void LogWarning(string format, params object[] args) { }
        public void LogError(string format, params object[] args) { }
        public void LogError(Exception ex, string format, params object[] args) { }
    }
}
