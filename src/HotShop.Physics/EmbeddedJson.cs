using System.Text.Json;
using System.Text.Json.Serialization;

namespace HotShop.Physics;

/// <summary>Reads the tables of numbers that travel inside this assembly, each with its source and licence.</summary>
internal static class EmbeddedJson
{
    static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web) { Converters = { new JsonStringEnumConverter() } };

    /// <param name="name">Path inside the project with dots, such as <c>Thermometry.its90.json</c>.</param>
    public static T Read<T>(string name)
    {
        using var stream = typeof(EmbeddedJson).Assembly.GetManifestResourceStream("HotShop.Physics." + name)
            ?? throw new InvalidOperationException($"table {name} is not built into HotShop.Physics");
        return JsonSerializer.Deserialize<T>(stream, Web) ?? throw new InvalidOperationException($"table {name} is empty");
    }
}
