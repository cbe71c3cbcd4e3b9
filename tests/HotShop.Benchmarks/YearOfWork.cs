using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Benchmarks;

/// <summary>A year's logbook of one furnace: five days a week sixty gathers by day and six charges in the evening, more kilograms on some days than on others.</summary>
static class YearOfWork
{
    const int GathersADay = 60, ChargesADay = 6;

    public static int Write(SqliteConnection connection, string appliance, Instant start, int days)
    {
        var entries = 0;
        StudioStore.Run(connection, "BEGIN");
        using var command = connection.CreateCommand();
        command.CommandText = "INSERT INTO log_entry (id, appliance, entry, at, who, fields, arrived) VALUES ($id, $appliance, $entry, $at, 'bench', $fields, $at)";
        foreach (var name in new[] { "$id", "$appliance", "$entry", "$at", "$fields" }) command.Parameters.Add(new SqliteParameter { ParameterName = name });
        command.Parameters["$appliance"].Value = appliance;
        for (var day = 0; day < days; day++)
        {
            var midnight = start + Duration.FromDays(day);
            if (midnight.InUtc().DayOfWeek is IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday) continue;
            for (var i = 0; i < GathersADay; i++) Put("gather", midnight + Duration.FromMinutes(9 * 60 + i * 8), "{\"size\":\"medium\",\"count\":1}");
            for (var i = 0; i < ChargesADay; i++) Put("charge", midnight + Duration.FromMinutes(17 * 60 + i * 40), $"{{\"material\":\"cullet\",\"mass\":{7 + day % 4},\"unit\":\"kg\"}}");
        }
        StudioStore.Run(connection, "COMMIT");
        return entries;

        void Put(string entry, Instant at, string fields)
        {
            command.Parameters["$id"].Value = $"bench-{entries++}";
            command.Parameters["$entry"].Value = entry;
            command.Parameters["$at"].Value = at.ToMicroseconds();
            command.Parameters["$fields"].Value = fields;
            command.ExecuteNonQuery();
        }
    }
}
