using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Store;

/// <summary>
/// One piece of work inside the one write transaction. State kept in memory beside the rows changes with them:
/// set it in the work, undo it in <see cref="OnRollback"/>, announce it in <see cref="OnCommit"/>.
/// </summary>
public sealed class WriteScope(SqliteConnection connection, Instant now)
{
    readonly StatementCache? statements;
    readonly List<Action> afterCommit = [];
    readonly List<Action> undo = [];

    internal WriteScope(SqliteConnection connection, Instant now, StatementCache statements) : this(connection, now) => this.statements = statements;

    public SqliteConnection Connection { get; } = connection;

    /// <summary>The service's time when the work began.</summary>
    public Instant Now { get; } = now;

    /// <summary>Runs once the transaction is on the disk, in order. Must not throw and must not write.</summary>
    public void OnCommit(Action action) => afterCommit.Add(action);

    /// <summary>Runs when this work or its transaction fails, last added first.</summary>
    public void OnRollback(Action action) => undo.Add(action);

    /// <summary>A command on the transaction's connection; parameters by name (<c>$name</c>).</summary>
    public SqliteCommand Command(string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        var command = Connection.CreateCommand();
        command.CommandText = sql;
        foreach (var (name, value) in parameters) command.Parameters.AddWithValue(name, value ?? DBNull.Value);
        return command;
    }

    /// <summary>Runs a statement that returns nothing; its text is kept prepared, so use parameters in the same order each time.</summary>
    /// <returns>Rows changed.</returns>
    public int Execute(string sql, params ReadOnlySpan<(string Name, object? Value)> parameters)
    {
        if (statements is not null) return statements.Take(sql, parameters).ExecuteNonQuery();
        using var command = Command(sql, parameters);
        return command.ExecuteNonQuery();
    }

    internal void Committed()
    {
        foreach (var action in afterCommit) action();
    }

    internal void RolledBack()
    {
        for (var i = undo.Count - 1; i >= 0; i--) undo[i]();
    }
}

/// <summary>The one writer of the store. Work is done in the order it came, many pieces to a commit when they wait together.</summary>
public interface IStoreWriter
{
    /// <summary>Completes after the commit. A failing piece of work is undone alone; a failing commit fails all that were in it.</summary>
    Task<T> Write<T>(Func<WriteScope, T> work, CancellationToken stop = default);

    Task Write(Action<WriteScope> work, CancellationToken stop = default) => Write(scope => { work(scope); return true; }, stop);
}

/// <summary>Opens connections for reading beside the writer: short-lived, one a query, disposed by the caller.</summary>
public interface IStoreReader
{
    SqliteConnection Open();
}

/// <summary>Called about once a second of the service's clock, inside a write transaction: for deadlines, minute close, repeats.</summary>
public interface ITickStage
{
    void Tick(WriteScope scope);
}
