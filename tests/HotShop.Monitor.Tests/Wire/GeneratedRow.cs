using System.Globalization;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Tests.Wire;

/// <summary>What a generated row must become: a value with its time, or a refusal.</summary>
sealed record Expected(double? Stored, Instant? At)
{
    public static readonly Expected Refusal = new(null, null);
}

/// <summary>One row as JSON with what it must become, worked out here from hand-typed factors and never by the code under test.</summary>
sealed record GeneratedRow(string Json, Expected Expected)
{
    // Channel, unit as sent (null: none), stored = sent × factor + offset. Exact definitions: international foot 0.3048 m, °C = (°F − 32)/1.8, 1 W·h = 3600 J.
    static readonly (string Channel, string? Unit, double Factor, double Offset)[] Good =
    [
        ("furnace-1/crown", null, 1, 0), ("furnace-1/crown", "Cel", 1, 0), ("furnace-1/crown", "[degF]", 1 / 1.8, -32 / 1.8), ("furnace-1/crown", "K", 1, -273.15),
        ("furnace-1/couple", null, 1, 0), ("furnace-1/couple", "mV", 1, 0), ("furnace-1/gas", "m3/h", 1, 0), ("furnace-1/gas", "L/min", 0.06, 0),
        ("furnace-1/gas", "[cft_i]/h", 0.3048 * 0.3048 * 0.3048, 0), ("shop/pulses", "{pulse}", 0.01, 0), ("shop/pulses", "m3", 1, 0), ("furnace-1/work", "MJ", 1 / 3.6, 0),
        ("shop/supply", "mbar", 100, 0), ("furnace-1/heat", "W", 0.001, 0),
    ];

    static readonly string[] WrongUnits = ["m", "kg", "Celsius", "", "°", "ppm", "kW h", "1", "cel"];
    static readonly string[] BadValues = ["null", "\"\"", "\"1148,6\"", "1e999", "-1e400", "\"NaN\"", "\"unavailable\"", "[]", "{}", "true", "\"off\"", "\"0x1F\"", "\"12 34\"", "\"--5\"", "\"１２\""];
    static readonly string[] BadTimes = ["0", "1772331185", "\"now\"", "\"2026-03-01T02:13:05\"", "\"2026-02-30T00:00:00Z\"", "\"2026-03-01 02:13:05Z\"", "true", "{}", "\"2026-03-01T25:00:00Z\""];
    static readonly string[] BadRows = ["7", "\"x\"", "null", "[]", "{}", "{\"temp\":5}", "{\"Value\":5}", "{\"value\":5,\"ts\":\"2026-03-01T02:13:05Z\"}", "{\"value\":5,\"unit\":3}"];

    public static (string Channel, Func<Random, GeneratedRow> Make) Source(Random random)
    {
        var channel = Pick(random, Good).Channel;
        return (channel, r => r.Next(3) == 0 ? Bad(r, channel) : Fine(r, channel));
    }

    public static GeneratedRow Fine(Random random, string channel)
    {
        var (_, unit, factor, offset) = Pick(random, Good.Where(g => g.Channel == channel).ToArray());
        var number = Math.Round(random.NextDouble() * 2000, random.Next(0, 7));
        var text = number.ToString(random.Next(4) == 0 ? "E16" : "R", CultureInfo.InvariantCulture);
        var at = random.Next(4) == 0 ? (Instant?)null : Instant.FromUnixTimeMilliseconds(random.NextInt64(0, 4_000_000_000_000));
        List<string> parts = [$"\"value\":{(random.Next(5) == 0 ? $"\"{text}\"" : text)}"];
        if (unit is not null) parts.Add($"\"unit\":\"{unit}\"");
        if (at is { } time) parts.Add($"\"time\":\"{Written(random, time)}\"");
        if (random.Next(4) == 0) parts.Add("\"rssi\":-60");
        var shuffled = parts.ToArray();
        random.Shuffle(shuffled);
        return new($"{{{string.Join(',', shuffled)}}}", new Expected(number * factor + offset, at));
    }

    public static GeneratedRow Bad(Random random, string channel)
    {
        var fine = Fine(random, channel).Json;
        var json = random.Next(5) switch
        {
            0 => $"{{\"value\":5,\"unit\":\"{Pick(random, WrongUnits)}\"}}",
            1 => $"{{\"value\":{Pick(random, BadValues)}}}",
            2 => $"{{\"value\":5,\"time\":{Pick(random, BadTimes)}}}",
            3 => Pick(random, BadRows),
            _ => $"{{\"VALUE\":1,{fine[1..]}",
        };
        return new(json, Expected.Refusal);
    }

    static string Written(Random random, Instant time)
    {
        var offset = Offset.FromHours(random.Next(-12, 13));
        var text = OffsetDateTimePattern.Rfc3339.Format(time.WithOffset(offset));
        return random.Next(4) == 0 ? text.ToLowerInvariant() : text;
    }

    static T Pick<T>(Random random, T[] choices) => choices[random.Next(choices.Length)];
}
