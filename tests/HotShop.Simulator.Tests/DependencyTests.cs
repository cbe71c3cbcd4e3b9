namespace HotShop.Simulator.Tests;

public class DependencyTests
{
    [Fact]
    public void The_simulator_knows_physics_and_a_client_but_nothing_of_the_service()
    {
        var known = typeof(SimulatedStudio).Assembly.GetReferencedAssemblies().Select(a => a.Name!).ToArray();
        Assert.Contains("HotShop.Physics", known);
        Assert.DoesNotContain(known, name => name.StartsWith("HotShop.", StringComparison.Ordinal) && name != "HotShop.Physics");
        Assert.DoesNotContain("MQTTnet.Server", known);
    }
}
