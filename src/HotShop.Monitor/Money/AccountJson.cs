using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using HotShop.Monitor.Http;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Money;

/// <summary>An account as JSON: the same from the address and from the command. Raw numbers stand beside the texts that are shown.</summary>
static class AccountJson
{
    public static JsonSerializerOptions Options { get; } = new(JsonSerializerDefaults.Web)
    {
        WriteIndented = true,
        // Texts have currency signs and dashes; this is never put into a page as it is.
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        Converters = { new InstantText(), new DayText(), new JsonStringEnumConverter(JsonNamingPolicy.KebabCaseLower) },
    };

    public static byte[] Of(Account account) => JsonSerializer.SerializeToUtf8Bytes(account, Options);

    sealed class DayText : JsonConverter<LocalDate>
    {
        public override LocalDate Read(ref Utf8JsonReader reader, Type typeToConvert, JsonSerializerOptions options) =>
            reader.GetString() is { } text && LocalDatePattern.Iso.Parse(text) is { Success: true } day ? day.Value : throw new JsonException("write a day like 2026-03-01");

        public override void Write(Utf8JsonWriter writer, LocalDate value, JsonSerializerOptions options) => writer.WriteStringValue(LocalDatePattern.Iso.Format(value));
    }
}
