using System.Text.Json;
using System.Text.Json.Serialization;
using HotShop.Monitor.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Http;

/// <summary>Times in JSON: RFC 3339 in UTC.</summary>
sealed class InstantText : JsonConverter<Instant>
{
    public override Instant Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
        reader.GetString() is { } text && StrictTime.Parse(text) is { } at ? at : throw new JsonException("write a time like 2026-03-01T02:13:05Z");

    public override void Write(Utf8JsonWriter writer, Instant value, JsonSerializerOptions options) => writer.WriteStringValue(InstantPattern.ExtendedIso.Format(value));
}
