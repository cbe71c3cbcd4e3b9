using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Loop;

/// <summary>Looks at the room on the store's disk once a minute, and puts the ballast back when there is room again.</summary>
sealed class DiskWatch(StudioStore store, HealthBoard health) : ITickStage
{
    const long Least = 200L << 20;
    Instant next = Instant.MinValue;

    /// <summary>The ballast being put back, beside the writer: tens of megabytes on a slow card take seconds, and an alarm must not wait for them.</summary>
    internal Task Restoring { get; private set; } = Task.CompletedTask;

    public void Tick(WriteScope scope)
    {
        if (scope.Now < next) return;
        next = scope.Now + Duration.FromMinutes(1);
        try
        {
            var free = store.Ballast.FreeBytes;
            var isShort = free < Least;
            if (!isShort && !store.Ballast.IsThere && Restoring.IsCompleted) Restoring = Task.Run(Restore);
            health.Report(HealthBoard.Disk, !isShort,
                isShort ? $"only {free >> 20} MiB are free on the store's disk; make room before readings are lost" : $"{free >> 30} GiB free", scope.Now);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            health.Report(HealthBoard.Disk, false, $"the store's disk cannot be looked at ({failure.Message}); check it", scope.Now);
        }
    }

    void Restore()
    {
        try
        {
            store.Ballast.Restore();
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            // The room went while it was written: the next look, a minute later, says what there is.
            store.Ballast.Free();
        }
    }
}
