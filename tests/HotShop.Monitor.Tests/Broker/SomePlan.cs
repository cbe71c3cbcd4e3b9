using System.Net;
using System.Net.Sockets;
using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Tests.Broker;

/// <summary>Plans of a small studio with the broker a test asks for, in a folder of their own.</summary>
static class SomePlan
{
    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    /// <param name="broker">The <c>broker</c> object of the configuration.</param>
    public static StudioPlan With(string broker, string folder)
    {
        var json = $$"""
            {
              "site": "quillmere",
              "broker": {{broker}},
              "appliances": [
                { "id": "furnace-1", "kind": "furnace", "channels": [ { "id": "crown", "quantity": "temperature" }, { "id": "flame", "quantity": "flame" } ] },
                { "id": "annealer-1", "kind": "annealer", "channels": [ { "id": "chamber", "quantity": "temperature" },
                  { "id": "door", "quantity": "door", "topic": "gadget/7/state", "valuePointer": "/open" } ] }
              ]
            }
            """;
        var configuration = ConfigurationFile.Parse(json, "test");
        Xunit.Assert.Empty(ConfigurationCheck.Problems(configuration, "test"));
        return PlanBuilder.Build(configuration, folder);
    }
}

/// <summary>A folder that goes when the test ends.</summary>
sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("hotshop-test-").FullName;

    public string Write(string name, string text)
    {
        var path = System.IO.Path.Combine(Path, name);
        File.WriteAllText(path, text);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
