using System.Globalization;

namespace HotShop.EndToEnd.Tests.Kill;

/// <summary>Readings of two channels, ten seconds apart, over hours that have ended; the same list for every run with the same hour of start.</summary>
sealed class TimedReadings
{
    public const string Crown = "hotshop/quillmere/furnace-1/crown", Gas = "hotshop/quillmere/furnace-1/gas";

    readonly DateTimeOffset start;
    int handedOut;

    /// <param name="count">Even: half for each channel.</param>
    /// <param name="now">The last reading lies before the hour that ended at least one hour ago.</param>
    public TimedReadings(int count, DateTimeOffset now)
    {
        (Count, MadeAt) = (count, now);
        End = new DateTimeOffset(now.Year, now.Month, now.Day, now.Hour, 0, 0, TimeSpan.Zero).AddHours(-1);
        start = End.AddSeconds(-10.0 * (count / 2));
    }

    public int Count { get; }

    public DateTimeOffset MadeAt { get; }

    /// <summary>A full hour, and the end of the last one with readings.</summary>
    public DateTimeOffset End { get; }

    /// <summary>How many a publisher has taken so far from <see cref="ToPublish"/>.</summary>
    public int HandedOut => Volatile.Read(ref handedOut);

    public IEnumerable<(string Topic, string Payload)> ToPublish()
    {
        foreach (var reading in All())
        {
            Interlocked.Increment(ref handedOut);
            yield return reading;
        }
    }

    public IEnumerable<(string Topic, string Payload)> All()
    {
        for (var i = 0; i < Count; i++)
        {
            var time = start.AddSeconds(10 * (i / 2)).ToString("yyyy-MM-ddTHH:mm:ssZ", CultureInfo.InvariantCulture);
            yield return i % 2 == 0
                ? (Crown, Payload(1100 + i * 7919 % 100_003 / 1000.0, "Cel", time))
                : (Gas, Payload(1 + i * 6007 % 100_019 / 100_000.0, "m3/h", time));
        }
    }

    static string Payload(double value, string unit, string time) => string.Create(CultureInfo.InvariantCulture, $"{{\"value\":{value:R},\"unit\":\"{unit}\",\"time\":\"{time}\"}}");

    /// <summary>As <see cref="StoredRows.Readings"/> must show them.</summary>
    public IReadOnlyList<string> AsStored() =>
    [
        .. All().Select(r =>
        {
            using var json = System.Text.Json.JsonDocument.Parse(r.Payload);
            var micros = DateTimeOffset.Parse(json.RootElement.GetProperty("time").GetString()!, CultureInfo.InvariantCulture).ToUnixTimeMilliseconds() * 1000;
            return (Channel: r.Topic["hotshop/quillmere/".Length..], Micros: micros, Bits: BitConverter.DoubleToInt64Bits(json.RootElement.GetProperty("value").GetDouble()));
        }).OrderBy(r => r.Channel, StringComparer.Ordinal).ThenBy(r => r.Micros).Select(r => $"{r.Channel} {r.Micros} {r.Bits:x16}"),
    ];
}
