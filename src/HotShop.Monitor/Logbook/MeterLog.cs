using HotShop.Monitor.Configuration;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;

namespace HotShop.Monitor.Logbook;

/// <summary>Readings of meters that people typed, as they hold after corrections.</summary>
public sealed class MeterLog(StudioPlan plan, IStoreReader store)
{
    /// <summary>All readings of a meter in order of time.</summary>
    public IReadOnlyList<MeterReading> Of(ChannelPlan meter)
    {
        if (plan.Appliance(meter.Appliance) is not { } appliance) return [];
        using var connection = store.Open();
        return Of(meter, appliance, connection);
    }

    internal static List<MeterReading> Of(ChannelPlan meter, AppliancePlan appliance, SqliteConnection connection) =>
        [.. Corrections.Apply(LogRows.MeterReadings(connection, appliance.Id))
            .Where(e => MeterReading.MeterOf(e.Fields, appliance).Meter?.Id == meter.Id).Select(e => MeterReading.Of(e.Id, e.At, e.Who, e.Fields))];
}
