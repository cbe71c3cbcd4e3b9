using HotShop.Monitor.Configuration;
using HotShop.Monitor.History;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Commands;

/// <summary>The store and what writes it, for a command that runs while no service does. Its lock is held meanwhile.</summary>
sealed class OfflineStudio : IAsyncDisposable
{
    readonly ServiceProvider services;
    readonly StudioStore store;

    OfflineStudio(StudioStore store, ServiceProvider services) => (this.store, this.services) = (store, services);

    /// <exception cref="StoreException">The store cannot be used; one line says why.</exception>
    public static OfflineStudio Open(StudioPlan plan, TimeProvider clock)
    {
        var store = StudioStore.Open(plan, isDemo: false);
        var collection = new ServiceCollection();
        collection.AddLogging().AddSingleton(plan).AddSingleton(clock).AddSingleton(plan.Channels);
        collection.AddSingleton(store).AddSingleton<IStoreReader>(store).AddSingleton(LoopPace.ForSpeed(1));
        MonitorHost.AddData(collection);
        return new OfflineStudio(store, collection.AddHistory().BuildServiceProvider());
    }

    public T The<T>() where T : notnull => services.GetRequiredService<T>();

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        store.Dispose();
    }
}
