using HotShop.Monitor.Store;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>Reads samples of a series from both tables, in time order. Values marked implausible or without a circuit are left out.</summary>
static class SampleRows
{
    const ReadingMarks LeftOut = ReadingMarks.Implausible | ReadingMarks.OpenCircuit | ReadingMarks.NoTerminals;

    /// <summary>The same as a condition on a row.</summary>
    public static readonly string ThatCount = $"(marks & {(int)LeftOut}) = 0";

    /// <summary>Whether sums take a reading with these marks.</summary>
    public static bool Counts(ReadingMarks marks) => (marks & LeftOut) == 0;

    /// <summary>Samples from up to three before the start to up to three after the end, as the integrals want them.</summary>
    public static List<Sample> WithNeighbours(SqliteConnection connection, int series, Instant from, Instant to)
    {
        var samples = new List<Sample>();
        samples.AddRange(Read(connection, $"at < $from AND {ThatCount}", "at DESC LIMIT 3", series, from, to));
        samples.Reverse();
        samples.AddRange(Read(connection, $"at >= $from AND at < $to AND {ThatCount}", "at", series, from, to));
        samples.AddRange(Read(connection, $"at >= $to AND {ThatCount}", "at LIMIT 3", series, from, to));
        return samples;
    }

    /// <summary>Samples in [from, to) in order of time: the newest of them where there are more than so many.</summary>
    public static List<Sample> Newest(SqliteConnection connection, int series, Instant from, Instant to, int most)
    {
        var samples = Read(connection, $"at >= $from AND at < $to AND {ThatCount}", $"at DESC LIMIT {most}", series, from, to);
        samples.Reverse();
        return samples;
    }

    /// <summary>Every stored value in [from, to) in order of time, microseconds, those that no sum takes included; one at a time, so that a year needs no memory.</summary>
    public static IEnumerable<(long At, double Value, ReadingMarks Marks)> Every(SqliteConnection connection, int series, long from, long to)
    {
        using var command = connection.CreateCommand();
        command.CommandText = """
            SELECT at, value, marks FROM reading WHERE series = $series AND at >= $from AND at < $to
            UNION ALL SELECT at, value, marks FROM arrival WHERE series = $series AND at >= $from AND at < $to ORDER BY at
            """;
        command.Parameters.AddWithValue("$series", series);
        command.Parameters.AddWithValue("$from", from);
        command.Parameters.AddWithValue("$to", to);
        using var rows = command.ExecuteReader();
        while (rows.Read()) yield return (rows.GetInt64(0), rows.GetDouble(1), (ReadingMarks)rows.GetInt64(2));
    }

    static List<Sample> Read(SqliteConnection connection, string where, string order, int series, Instant from, Instant to)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            SELECT at, value FROM (
                SELECT * FROM (SELECT at, value FROM reading WHERE series = $series AND {where} ORDER BY {order})
                UNION ALL
                SELECT * FROM (SELECT at, value FROM arrival WHERE series = $series AND {where} ORDER BY {order})
            ) ORDER BY {order}
            """;
        command.Parameters.AddWithValue("$series", series);
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        using var rows = command.ExecuteReader();
        var samples = new List<Sample>();
        while (rows.Read()) samples.Add(new Sample(rows.GetInstant(0), rows.GetDouble(1)));
        return samples;
    }
}
