using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using HotShop.Physics.Energy;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>An hour of a series that comes out differently.</summary>
/// <param name="Row">As it is computed now; null where only its minutes differ.</param>
sealed record ChangedHour(Series Series, Instant Hour, HourRow? Row);

/// <summary>
/// Computes hour and minute rows again from the readings, by the rules and with the channels as they were described then, and compares them bit by bit.
/// </summary>
sealed class HourReplay(PlanHistory plans, IStoreReader store)
{
    /// <param name="hours">Told of hour rows.</param>
    /// <param name="minutes">Told of minute rows.</param>
    /// <returns>Hours that have to be written again.</returns>
    public List<ChangedHour> Run(Series series, Instant from, Instant to, PartTally hours, PartTally minutes, CancellationToken stop)
    {
        var changed = new List<ChangedHour>();
        using var connection = store.Open();
        var kept = Hours(connection, series.Id, from, to);
        var waiting = Waiting(connection, series.Id, from, to);
        using var stream = new SeriesStream(connection, series.Id, from, to);
        using var keptMinutes = new MinuteStream(connection, series.Id, from, to);
        for (var hour = from; hour < to; hour += Duration.FromHours(1))
        {
            stop.ThrowIfCancellationRequested();
            var end = hour + Duration.FromHours(1);
            var samples = stream.Hour(hour, end, out var inside);
            var stored = kept.GetValueOrDefault(hour);
            var storedMinutes = keptMinutes.Hour(end);
            if (waiting.Contains(hour) || plans.Channel(series.Channel, hour) is not { } channel || channel.Quantity.CanonicalUnit() != series.Unit || stored?.Count > inside)
            {
                // Waiting to be computed anyway, not described, or its readings have been let go: the row is all there is.
                if (stored is not null || waiting.Contains(hour)) hours.Left++;
                continue;
            }
            var row = HourRow.Of(hour, samples, channel);
            if (row.IsEmpty)
            {
                if (stored is not null) hours.Left++;
                continue;
            }
            hours.Checked++;
            if (row != stored)
            {
                hours.Differs(series.Channel, hour, Text(stored), Text(row));
                changed.Add(new ChangedHour(series, hour, row));
            }
            else if (!SameMinutes(series, hour, end, samples, channel, storedMinutes, minutes)) changed.Add(new ChangedHour(series, hour, null));
        }
        return changed;
    }

    static bool SameMinutes(Series series, Instant hour, Instant end, List<Sample> samples, ChannelPlan channel, List<MinuteRow> stored, PartTally tally)
    {
        var isSame = true;
        int at = 0, first = 0;
        for (var minute = hour; minute < end; minute += Duration.FromMinutes(1))
        {
            while (first < samples.Count && samples[first].At < minute) first++;
            var last = first;
            while (last < samples.Count && samples[last].At < minute + Duration.FromMinutes(1)) last++;
            var was = at < stored.Count && stored[at].Minute == minute ? stored[at++] : null;
            if (last == first) continue;
            tally.Checked++;
            // Its own samples and three on each side decide a minute as they do an hour.
            var start = Math.Max(0, first - 3);
            var row = MinuteRow.Of(minute, samples.GetRange(start, Math.Min(samples.Count, last + 3) - start), channel);
            if (row == was) continue;
            isSame = false;
            tally.Differs(series.Channel, minute, was is null ? "nothing" : Number(was.Mean), row is null ? "nothing" : Number(row.Mean));
        }
        return isSame;
    }

    static string Text(HourRow? row) => row is null ? "nothing" : $"{Number(row.Amount)} over {Number(row.CoveredSeconds)} s";

    static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);

    static Dictionary<Instant, HourRow> Hours(SqliteConnection connection, int series, Instant from, Instant to)
    {
        using var command = Command(connection, "SELECT hour, amount, covered_seconds, gap_seconds, mean, min, max, count, resets FROM hour WHERE series = $series AND hour >= $from AND hour < $to", series, from, to);
        using var rows = command.ExecuteReader();
        var all = new Dictionary<Instant, HourRow>();
        while (rows.Read())
        {
            var row = HourRow.Read(rows, 0);
            all[row.Hour] = row;
        }
        return all;
    }

    static HashSet<Instant> Waiting(SqliteConnection connection, int series, Instant from, Instant to)
    {
        using var command = Command(connection, "SELECT hour FROM dirty WHERE series = $series AND hour >= $from AND hour < $to", series, from, to);
        using var rows = command.ExecuteReader();
        var all = new HashSet<Instant>();
        while (rows.Read()) all.Add(rows.GetInstant(0));
        return all;
    }

    static SqliteCommand Command(SqliteConnection connection, string sql, int series, Instant from, Instant to)
    {
        var command = connection.CreateCommand();
        command.CommandText = sql;
        command.Parameters.AddWithValue("$series", series);
        command.Parameters.AddWithValue("$from", from.ToMicroseconds());
        command.Parameters.AddWithValue("$to", to.ToMicroseconds());
        return command;
    }

    /// <summary>Minute rows in order, an hour at a time.</summary>
    sealed class MinuteStream : IDisposable
    {
        readonly SqliteCommand command;
        readonly SqliteDataReader rows;
        MinuteRow? next;

        public MinuteStream(SqliteConnection connection, int series, Instant from, Instant to)
        {
            command = Command(connection, "SELECT minute, mean, min, max, count FROM minute WHERE series = $series AND minute >= $from AND minute < $to ORDER BY minute", series, from, to);
            rows = command.ExecuteReader();
            next = Next();
        }

        public List<MinuteRow> Hour(Instant end)
        {
            var hour = new List<MinuteRow>(60);
            while (next is not null && next.Minute < end)
            {
                hour.Add(next);
                next = Next();
            }
            return hour;
        }

        MinuteRow? Next() => rows.Read() ? new MinuteRow(rows.GetInstant(0), rows.GetDouble(1), rows.GetDouble(2), rows.GetDouble(3), rows.GetInt32(4)) : null;

        public void Dispose()
        {
            rows.Dispose();
            command.Dispose();
        }
    }
}
