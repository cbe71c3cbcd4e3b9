using System.Threading.Channels;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Store;

/// <summary>
/// The one writer, on a thread of its own. Takes what waits (up to 1,000 pieces), does it in one transaction, commits,
/// then lets everybody know. Commits as soon as it is idle; the memory-card profile waits first.
/// </summary>
public sealed partial class StoreWriter : IStoreWriter, IAsyncDisposable
{
    const int MostInOneCommit = 1000;

    readonly Channel<Piece> waiting = Channel.CreateUnbounded<Piece>();
    readonly StudioStore store;
    readonly SqliteConnection connection;
    readonly StatementCache statements;
    readonly HealthBoard health;
    readonly TimeProvider clock;
    readonly TimeSpan linger;
    readonly ILogger<StoreWriter> log;
    readonly Thread thread;
    readonly ManualResetEventSlim closing = new();
    readonly TaskCompletionSource ended = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public StoreWriter(StudioStore store, StudioPlan plan, HealthBoard health, TimeProvider clock, ILogger<StoreWriter> log)
    {
        (this.store, this.health, this.clock, this.log) = (store, health, clock, log);
        linger = plan.Configuration.Store.Profile == "memory-card" ? TimeSpan.FromSeconds(plan.Configuration.Store.CardLingerSeconds) : TimeSpan.Zero;
        connection = store.OpenWriter();
        statements = new StatementCache(connection);
        health.Report(HealthBoard.Store, true, "open", Now);
        thread = new Thread(Loop) { IsBackground = true, Name = "store writer" };
        thread.Start();
    }

    /// <summary>Pieces of work that wait for their commit.</summary>
    public int Waiting => waiting.Reader.Count;

    Instant Now => clock.GetUtcNow().ToInstant();

    public Task<T> Write<T>(Func<WriteScope, T> work, CancellationToken stop = default)
    {
        stop.ThrowIfCancellationRequested();
        var piece = new Piece<T>(work);
        if (!waiting.Writer.TryWrite(piece)) throw new StoreException("the store is closing; send it again when the service is back");
        return piece.Done;
    }

    void Loop()
    {
        var batch = new List<Piece>(MostInOneCommit);
        try
        {
            while (waiting.Reader.WaitToReadAsync().AsTask().GetAwaiter().GetResult())
            {
                // The linger is real time: it spares the card, however fast a demo's clock runs.
                if (linger > TimeSpan.Zero) closing.Wait(linger);
                batch.Clear();
                while (batch.Count < MostInOneCommit && waiting.Reader.TryRead(out var piece)) batch.Add(piece);
                Commit(batch);
            }
        }
        finally
        {
            ended.TrySetResult();
        }
    }

    void Commit(List<Piece> batch)
    {
        try
        {
            StudioStore.Run(connection, "BEGIN IMMEDIATE");
            foreach (var piece in batch) Try(piece);
            StudioStore.Run(connection, "COMMIT");
        }
        catch (SqliteException failure)
        {
            Failed(batch, failure);
            return;
        }
        health.Report(HealthBoard.Store, true, "writing", Now);
        foreach (var piece in batch) Announce(piece);
    }

    /// <summary>What is on the disk is done, whatever goes wrong in telling others: a page that trips must not end the writer.</summary>
    void Announce(Piece piece)
    {
        try
        {
            piece.Committed();
        }
        catch (Exception failure)
        {
            AnnouncementFailed(failure);
            piece.Finish();
        }
    }

    /// <summary>A piece that throws is undone alone; its neighbours in the transaction stay.</summary>
    void Try(Piece piece)
    {
        StudioStore.Run(connection, "SAVEPOINT piece");
        var scope = new WriteScope(connection, Now, statements);
        try
        {
            piece.Run(scope);
        }
        catch (Exception failure) when (failure is not SqliteException { SqliteErrorCode: 10 or 11 or 13 or 8 })
        {
            scope.RolledBack();
            piece.Fail(failure);
            StudioStore.Run(connection, "ROLLBACK TO piece");
        }
        StudioStore.Run(connection, "RELEASE piece");
    }

    void Failed(List<Piece> batch, SqliteException failure)
    {
        for (var i = batch.Count - 1; i >= 0; i--) batch[i].RolledBack();
        try
        {
            StudioStore.Run(connection, "ROLLBACK");
        }
        catch (SqliteException)
        {
            // SQLite has already rolled back by itself, as it does on a full disk.
        }
        var isFull = failure.SqliteErrorCode == 13;
        if (isFull && FreeBallast()) health.Report(HealthBoard.Disk, false, "the disk is full; the ballast was freed so that alarms can still be stored. Make room", Now);
        health.Report(HealthBoard.Store, false, $"nothing can be stored: {failure.Message.TrimEnd('.')}. Devices keep sending again; check the disk", Now);
        CommitFailed(batch.Count, failure);
        var cause = new StoreException($"the store could not commit: {failure.Message}", failure);
        foreach (var piece in batch) piece.Fail(cause);
    }

    bool FreeBallast()
    {
        try
        {
            return store.Ballast.Free();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            BallastStuck(failure);
            return false;
        }
    }

    public async ValueTask DisposeAsync()
    {
        if (!waiting.Writer.TryComplete()) return;
        closing.Set();
        await ended.Task;
        thread.Join();
        closing.Dispose();
        statements.Dispose();
        await connection.DisposeAsync();
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "A commit of {Count} pieces failed; their senders will send again")]
    private partial void CommitFailed(int count, Exception failure);

    [LoggerMessage(Level = LogLevel.Error, Message = "Something was stored, but not everybody who shows it could be told")]
    private partial void AnnouncementFailed(Exception failure);

    [LoggerMessage(Level = LogLevel.Error, Message = "The ballast could not be freed")]
    private partial void BallastStuck(Exception failure);

    abstract class Piece
    {
        WriteScope? scope;
        bool hasFailed;

        public void Run(WriteScope inScope)
        {
            scope = inScope;
            Work(inScope);
        }

        public void Committed()
        {
            if (hasFailed) return;
            scope!.Committed();
            Complete();
        }

        /// <summary>Lets the sender go on; a second call changes nothing.</summary>
        public void Finish() => Complete();

        public void RolledBack()
        {
            if (!hasFailed) scope?.RolledBack();
        }

        public void Fail(Exception failure)
        {
            if (hasFailed) return;
            hasFailed = true;
            Fault(failure);
        }

        protected abstract void Work(WriteScope scope);
        protected abstract void Complete();
        protected abstract void Fault(Exception failure);
    }

    sealed class Piece<T>(Func<WriteScope, T> work) : Piece
    {
        readonly TaskCompletionSource<T> done = new(TaskCreationOptions.RunContinuationsAsynchronously);
        T? result;

        public Task<T> Done => done.Task;

        protected override void Work(WriteScope scope) => result = work(scope);
        protected override void Complete() => done.TrySetResult(result!);
        protected override void Fault(Exception failure) => done.TrySetException(failure);
    }
}
