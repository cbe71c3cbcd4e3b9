using HotShop.Monitor.Broker;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Broker;

/// <summary>Who may press whose button.</summary>
public class ButtonAccessTests
{
    [Fact]
    public void A_device_presses_the_buttons_of_its_own_appliances_only_and_an_outside_broker_is_asked_for_their_topics()
    {
        var channels = PlanBuilder.Build(SomeStudio.Configuration with { Buttons = [new() { Id = "puck", Appliance = "furnace-1", Size = "medium", Topic = "puck/3" }] }, "/tmp").Channels;
        Assert.Null(new DeviceAccess("furnace", new HashSet<string> { "furnace-1" }, channels).DenyPublish("puck/3"));
        Assert.NotNull(new DeviceAccess("annealer", new HashSet<string> { "annealer-1" }, channels).DenyPublish("puck/3"));
        Assert.Contains("puck/3", channels.Subscriptions());
    }
}
