using System.Globalization;
using System.Text;
using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>Every number of an embedded JSON table, with its path.</summary>
static class TableNumbers
{
    public static IEnumerable<Mutant> In(byte[] json, string file)
    {
        var order = 0;
        foreach (var (path, start, length) in Numbers(json))
        {
            var text = Encoding.UTF8.GetString(json, start, length);
            var value = double.Parse(text, CultureInfo.InvariantCulture);
            var isWhole = text.AsSpan().IndexOfAny('.', 'E', 'e') < 0;
            yield return new($"{file} {path}", file, json.AsSpan(0, start).Count((byte)'\n') + 1, text, Alteration.Text(Alteration.Of(value)),
                isWhole ? FormattableString.Invariant($"{value + 1:0}") : null, order++, IsCopied: false);
        }
    }

    /// <summary>The table without blanks, with room at its end for a number that has become longer.</summary>
    public static byte[] Compact(byte[] json)
    {
        using var document = JsonDocument.Parse(json);
        var compact = JsonSerializer.SerializeToUtf8Bytes(document.RootElement);
        return [.. compact, .. Enumerable.Repeat((byte)' ', 64)];
    }

    /// <summary>The compact table with one number altered, as long as before.</summary>
    public static byte[] Altered(byte[] compact, int order, string now)
    {
        var (_, start, length) = Numbers(compact).ElementAt(order);
        byte[] altered = [.. compact.AsSpan(0, start), .. Encoding.ASCII.GetBytes(now), .. compact.AsSpan(start + length)];
        return [.. altered.AsSpan(0, Math.Min(altered.Length, compact.Length)), .. Enumerable.Repeat((byte)' ', Math.Max(0, compact.Length - altered.Length))];
    }

    static List<(string Path, int Start, int Length)> Numbers(ReadOnlySpan<byte> json)
    {
        var found = new List<(string, int, int)>();
        var path = new Stack<(string Name, int Index)>();
        var reader = new Utf8JsonReader(json);
        var name = "";
        while (reader.Read())
        {
            switch (reader.TokenType)
            {
                case JsonTokenType.PropertyName:
                    name = reader.GetString()!;
                    continue;
                case JsonTokenType.StartObject or JsonTokenType.StartArray:
                    path.Push((Step(path, name), reader.TokenType == JsonTokenType.StartArray ? 0 : -1));
                    name = "";
                    continue;
                case JsonTokenType.EndObject or JsonTokenType.EndArray:
                    path.Pop();
                    break;
                case JsonTokenType.Number:
                    found.Add((string.Concat(path.Reverse().Select(p => p.Name)) [1..] + Step(path, name), (int)reader.TokenStartIndex, reader.ValueSpan.Length));
                    break;
            }
            if (path.TryPeek(out var parent) && parent.Index >= 0)
            {
                path.Pop();
                path.Push((parent.Name, parent.Index + 1));
            }
            name = "";
        }
        return found;
    }

    static string Step(Stack<(string Name, int Index)> path, string name) =>
        path.TryPeek(out var parent) && parent.Index >= 0 ? FormattableString.Invariant($"[{parent.Index}]") : "." + name;
}
