using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Store;

/// <summary>How the store writes times: whole microseconds since 1970 UTC.</summary>
public static class Columns
{
    public static long ToMicroseconds(this Instant instant) => instant.ToUnixTimeTicks() / 10;

    public static Instant FromMicroseconds(long microseconds) => Instant.FromUnixTimeTicks(microseconds * 10);

    /// <summary>Cuts below a microsecond, so that a time survives being stored.</summary>
    public static Instant Whole(this Instant instant) => FromMicroseconds(instant.ToMicroseconds());

    public static Instant GetInstant(this SqliteDataReader row, int column) => FromMicroseconds(row.GetInt64(column));

    public static Instant? GetInstantOrNull(this SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetInstant(column);

    public static string? GetTextOrNull(this SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetString(column);

    public static double? GetNumberOrNull(this SqliteDataReader row, int column) => row.IsDBNull(column) ? null : row.GetDouble(column);
}
