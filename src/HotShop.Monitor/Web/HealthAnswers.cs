using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Live;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Web;

public sealed record PartAnswer(string Part, string State, string Detail, Instant? Since);

public sealed record StoreAnswer(long Bytes, long WalBytes, long ReadingsStored, int WaitingToBeWritten);

public sealed record HealthAnswer(
    IReadOnlyList<PartAnswer> Parts, IReadOnlyList<RefusedMessage> Refused, IReadOnlyDictionary<string, long> Counters, StoreAnswer Store, int OpenPages, BrokerSnapshot Broker);

/// <summary>How the watcher itself is: for the health page, readiness and whoever maintains it.</summary>
sealed class HealthAnswers(HealthBoard board, StudioStore store, StoreWriter writer, LiveFeed live, BrokerCounters broker)
{
    /// <summary>Without these nobody is watched: readiness depends on them.</summary>
    static readonly string[] Needed = [HealthBoard.Store, HealthBoard.Loop, HealthBoard.Broker];

    public HealthAnswer All()
    {
        var (bytes, wal) = store.Sizes();
        return new HealthAnswer([.. board.Parts.Select(Answer)], RefusedList.Newest(store, 100), Counters.Read(store),
            new StoreAnswer(bytes, wal, Stored(), writer.Waiting), live.Open, broker.Snapshot());
    }

    /// <summary>What is not ready, with reasons; empty when ready.</summary>
    public IReadOnlyList<PartAnswer> NotReady() =>
        [.. Needed.Select(part => board.Of(part) is { } health ? Answer(health) : new PartAnswer(part, "trouble", "not started yet", null)).Where(p => p.State == "trouble")];

    static PartAnswer Answer(PartHealth part) => new(part.Part, !part.IsWorking ? "trouble" : part.IsSetUp ? "working" : "not-set-up", part.Detail, part.Since);

    /// <summary>Arrivals ever stored: their numbers are never used twice.</summary>
    long Stored()
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT max(ifnull((SELECT max(seq) FROM arrival), 0), ifnull((SELECT CAST(value AS INTEGER) FROM fact WHERE name = 'moved-to'), 0))";
        return (long)command.ExecuteScalar()!;
    }
}
