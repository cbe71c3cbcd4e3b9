using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests;

public class ArchitectureTests
{
    [Fact]
    public void Physics_knows_no_wire_no_store_and_no_host()
    {
        // Each addition is a decision. System.Text.Json reads the tables inside the assembly.
        string[] allowed = ["System.Runtime", "System.Collections", "System.Linq", "System.Memory", "System.Text.Json", "NodaTime", "MathNet.Numerics"];
        Assert.Empty(typeof(Thermocouple).Assembly.GetReferencedAssemblies().Select(a => a.Name!).Except(allowed));
    }

    [Fact]
    public void Every_table_inside_names_its_source_and_licence()
    {
        var assembly = typeof(Thermocouple).Assembly;
        var tables = assembly.GetManifestResourceNames().Where(n => n.EndsWith(".json", StringComparison.Ordinal)).ToArray();
        Assert.NotEmpty(tables);
        Assert.All(tables, name =>
        {
            using var stream = assembly.GetManifestResourceStream(name)!;
            using var json = System.Text.Json.JsonDocument.Parse(stream);
            Assert.True(json.RootElement.GetProperty("source").GetString()!.Length > 10);
            Assert.True(json.RootElement.GetProperty("licence").GetString()!.Length > 10);
        });
    }
}
