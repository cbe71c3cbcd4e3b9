using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using HotShop.Monitor.Wire;
using Xunit;

namespace HotShop.Monitor.Tests.Wire;

/// <summary>Thousands of payloads, good, bad and broken, each with an oracle that knows what must become of it: no crash, no wrong value, every row accounted for.</summary>
public partial class GeneratedPayloadTests
{
    [Theory, InlineData(1), InlineData(2), InlineData(3), InlineData(4)]
    public void Every_row_becomes_the_reading_it_says_or_a_refusal(int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < 2000; i++)
        {
            var (channel, make) = GeneratedRow.Source(random);
            var rows = Enumerable.Range(0, random.Next(1, 12)).Select(_ => make(random)).ToList();
            var isArray = rows.Count > 1 || random.Next(2) == 0;
            // An array or a scalar in the place of the one object is read as a payload of its own, so the lone row stays an object.
            if (!isArray && !rows[0].Json.StartsWith('{')) continue;
            var gap = random.Next(3) == 0 ? " \r\n\t" : "";
            var payload = isArray ? $"{gap}[{gap}{string.Join("," + gap, rows.Select(r => r.Json))}]{gap}" : gap + rows[0].Json + gap;
            if (random.Next(5) == 0) payload = "\uFEFF" + payload;

            var content = SomeChannels.Send(channel, payload);

            var good = rows.Where(r => r.Expected.Stored is not null).ToList();
            Assert.True(good.Count == content.Readings.Count && rows.Count - good.Count == content.Refusals.Count, $"{channel}: {payload}");
            foreach (var (row, reading) in good.Zip(content.Readings))
            {
                Assert.True(Math.Abs(row.Expected.Stored!.Value - reading.Value) <= 1e-12 * Math.Max(1, Math.Abs(reading.Value)), $"{channel}: {row.Json} became {reading.Value:R}");
                Assert.Equal(row.Expected.At, reading.At);
            }
            if (isArray)
                Assert.Equal(rows.Select((r, index) => (r, index)).Where(r => r.r.Expected.Stored is null).Select(r => r.index), content.Refusals.Select(r => r.Index!.Value));
        }
    }

    [Theory, InlineData(11), InlineData(12)]
    public void A_broken_payload_is_one_refusal_and_no_value(int seed)
    {
        var random = new Random(seed);
        for (var i = 0; i < 1500; i++)
        {
            var (channel, _) = GeneratedRow.Source(random);
            var whole = Encoding.UTF8.GetBytes($"[{string.Join(',', Enumerable.Range(0, random.Next(1, 6)).Select(_ => GeneratedRow.Fine(random, channel).Json))}]");
            byte[] broken = random.Next(7) switch
            {
                0 => whole[..random.Next(1, whole.Length)],
                1 => [.. whole, .. "]"u8],
                2 => [.. whole[..^1], .. ",]"u8],
                3 => [.. whole[..5], 0xFF, .. whole[5..]],
                5 => [.. "[{\"value\":1,"u8, .. whole[2..]],     // a key twice: the whole payload is doubtful
                4 => [.. Encoding.UTF8.GetBytes(new string('[', random.Next(33, 20_000))), .. whole],
                _ => [.. whole, .. Encoding.UTF8.GetBytes(new string(' ', MessageReader.LargestPayloadBytes))],
            };
            SomeChannels.Reason(SomeChannels.Read($"hotshop/quillmere/{channel}", broken));
        }
    }

    [Theory, InlineData(21), InlineData(22)]
    public void A_plain_text_becomes_a_value_only_where_it_is_a_number(int seed)
    {
        const string Alphabet = "0123456789012345678901234567890123456789..--++eE, \n\u00b0Cx\"NaI∞１";
        var random = new Random(seed);
        var values = 0;
        for (var i = 0; i < 5000; i++)
        {
            var text = new string(Enumerable.Range(0, random.Next(1, 9)).Select(_ => Alphabet[random.Next(Alphabet.Length)]).ToArray());
            var content = SomeChannels.Send("furnace-1/gas", text);
            var trimmed = text.Trim(' ', '\n');
            if (trimmed.Length >= 2 && trimmed[0] == '"' && trimmed[^1] == '"') trimmed = trimmed[1..^1].Trim(' ');
            var isNumber = Number().IsMatch(trimmed) && double.IsFinite(double.Parse(trimmed, CultureInfo.InvariantCulture));
            Assert.True((isNumber ? 1 : 0) == content.Readings.Count, $"'{text}' gave {content.Readings.Count} readings");
            Assert.Equal(1, content.Readings.Count + content.Refusals.Count);
            if (isNumber) Assert.Equal(double.Parse(trimmed, CultureInfo.InvariantCulture), Assert.Single(content.Readings).Value);
            values += content.Readings.Count;
        }
        Assert.InRange(values, 500, 4500);      // the generator makes both kinds
    }

    [Theory, InlineData(31), InlineData(32)]
    public void Any_bytes_on_any_topic_are_accounted_for(int seed)
    {
        var random = new Random(seed);
        string[] topics = ["hotshop/quillmere/furnace-1/crown", "hotshop/quillmere/furnace-1/flame", "hotshop/quillmere/furnace-1/log", "gadget/7/state", "hotshop/quillmere/x/y", ""];
        var seeds = new[] { """{"value":5,"unit":"Cel","time":"2026-03-01T02:13:05Z"}""", """{"sensors":[{"t":5}],"when":"2026-03-01T02:13:05Z","door/open":true}""", """{"entry":"gather","size":"small","count":2}""" };
        for (var i = 0; i < 5000; i++)
        {
            var payload = new byte[random.Next(0, 60)];
            random.NextBytes(payload);
            if (random.Next(2) == 0)
            {
                payload = Encoding.UTF8.GetBytes(seeds[random.Next(seeds.Length)]);
                for (var flips = random.Next(1, 4); flips > 0; flips--) payload[random.Next(payload.Length)] = (byte)random.Next(256);
            }
            var content = SomeChannels.Read(topics[random.Next(topics.Length)], payload, retained: random.Next(2) == 0);
            Assert.True(content.Readings.Count + content.Refusals.Count + (content.Entry is null ? 0 : 1) >= 1, Convert.ToHexString(payload));
            Assert.All(content.Readings, r => Assert.True(double.IsFinite(r.Value)));
            Assert.All(content.Refusals, r => Assert.DoesNotContain(r.Reason, char.IsControl));
        }
    }

    [GeneratedRegex(@"\A[+-]?([0-9]+\.?[0-9]*|\.[0-9]+)([eE][+-]?[0-9]+)?\z")]
    private static partial Regex Number();
}
