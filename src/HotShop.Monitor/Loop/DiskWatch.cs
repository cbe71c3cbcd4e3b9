using HotShop.Monitor.Health;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Loop;

/// <summary>Looks at the room on the store's disk once a minute, and puts the ballast back when there is room again.</summary>
sealed class DiskWatch(StudioStore store, HealthBoard health) : ITickStage
{
    const long Least = 200L << 20;
    Instant next = Instant.MinValue;

    public void Tick(WriteScope scope)
    {
        if (scope.Now < next) return;
        next = scope.Now + Duration.FromMinutes(1);
        try
        {
            var free = store.Ballast.FreeBytes;
            var isShort = free < Least;
            if (!isShort) store.Ballast.Restore();
            health.Report(HealthBoard.Disk, !isShort,
                isShort ? $"only {free >> 20} MiB are free on the store's disk; make room before readings are lost" : $"{free >> 30} GiB free", scope.Now);
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            health.Report(HealthBoard.Disk, false, $"the store's disk cannot be looked at ({failure.Message}); check it", scope.Now);
        }
    }
}
