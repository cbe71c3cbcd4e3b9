using System.ComponentModel;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.Json.Schema;
using System.Text.Json.Serialization.Metadata;

namespace HotShop.Monitor.Configuration;

/// <summary>The JSON schema of the configuration, made from its types: editors complete and check with it.</summary>
public static class ConfigurationSchema
{
    public const string FileName = "hotshop.schema.json";

    public static string Text()
    {
        var options = new JsonSerializerOptions(ConfigurationFile.Json) { TypeInfoResolver = new DefaultJsonTypeInfoResolver() };
        var schema = options.GetJsonSchemaAsNode(typeof(StudioConfiguration), new JsonSchemaExporterOptions { TreatNullObliviousAsNonNullable = true, TransformSchemaNode = Describe });
        var root = (JsonObject)schema;
        root.Insert(0, "$schema", "https://json-schema.org/draft/2020-12/schema");
        root["title"] = "Configuration of HotShop.Monitor";
        // In the file the key is "$schema"; the reader knows it under its plain name.
        var properties = (JsonObject)root["properties"]!;
        var own = properties["schema"]!.DeepClone();
        properties.Remove("schema");
        properties["$schema"] = own;
        return schema.ToJsonString(new JsonSerializerOptions { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }) + "\n";
    }

    static JsonNode Describe(JsonSchemaExporterContext context, JsonNode schema)
    {
        var description = context.PropertyInfo?.AttributeProvider?.GetCustomAttributes(typeof(DescriptionAttribute), false).OfType<DescriptionAttribute>().FirstOrDefault()
            ?? context.TypeInfo.Type.GetCustomAttribute<DescriptionAttribute>();
        if (description is not null && schema is JsonObject node) node.Insert(0, "description", description.Description);
        return schema;
    }
}
