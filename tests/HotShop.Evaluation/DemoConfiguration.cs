using HotShop.Monitor.Configuration;
using HotShop.Monitor;

namespace HotShop.Evaluation;

/// <summary>What the service is told of the studio: the demo's own file.</summary>
static class DemoConfiguration
{
    public static StudioConfiguration Read()
    {
        using var reader = new StreamReader(typeof(MonitorHost).Assembly.GetManifestResourceStream("HotShop.Monitor.Demo.quillmere.jsonc")!);
        return ConfigurationFile.Parse(reader.ReadToEnd(), "quillmere.jsonc");
    }
}
