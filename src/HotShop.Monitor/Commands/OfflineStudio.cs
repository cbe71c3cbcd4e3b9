using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.History;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Store;

namespace HotShop.Monitor.Commands;

/// <summary>The store and what writes it, for a command that runs while no service does. Its lock is held meanwhile.</summary>
sealed class OfflineStudio : IAsyncDisposable
{
    readonly ServiceProvider services;
    readonly StudioStore? store;

    OfflineStudio(StudioStore? store, ServiceProvider services) => (this.store, this.services) = (store, services);

    /// <exception cref="StoreException">The store cannot be used; one line says why.</exception>
    public static OfflineStudio Open(StudioPlan plan, TimeProvider clock)
    {
        var store = StudioStore.Open(plan, isDemo: false);
        return new OfflineStudio(store, Parts(plan, clock).AddSingleton(store).AddSingleton<IStoreReader>(store).BuildServiceProvider());
    }

    /// <summary>For looking only: beside a service that has the store, or without one; with the configuration as the file has it now, whatever the service runs with.</summary>
    /// <exception cref="StoreException">There is no store of this version's form.</exception>
    public static OfflineStudio Beside(StudioPlan plan, TimeProvider clock) =>
        new(null, Parts(plan, clock).AddSingleton<IStoreReader>(StoreView.Open(plan.DataDirectory)).AddSingleton<IStoreWriter, NoWriter>().BuildServiceProvider());

    static IServiceCollection Parts(StudioPlan plan, TimeProvider clock)
    {
        var collection = new ServiceCollection();
        collection.AddLogging().AddSingleton(plan).AddSingleton(clock).AddSingleton(plan.Channels).AddSingleton(LoopPace.ForSpeed(1));
        MonitorHost.AddData(collection);
        return collection.AddAnnealing().AddHistory();
    }

    public T The<T>() where T : notnull => services.GetRequiredService<T>();

    public async ValueTask DisposeAsync()
    {
        await services.DisposeAsync();
        store?.Dispose();
    }

    sealed class NoWriter : IStoreWriter
    {
        public Task<T> Write<T>(Func<WriteScope, T> work, CancellationToken stop = default) => throw new StoreException("this command only looks; nothing is written");
    }
}
