using System.Text.Json;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Wiring;

public sealed class AddedChannelsTests : IDisposable
{
    readonly TemporaryFolder folder = new();

    public void Dispose() => folder.Dispose();

    string Data => Path.Combine(folder.Path, "data");

    string Write(StudioConfiguration? written = null) =>
        folder.Write("hotshop.json", "// The owner's own words.\n" + JsonSerializer.Serialize((written ?? SomeStudio.Configuration) with { DataDirectory = "data" }, ConfigurationFile.Json));

    static AddedChannel Far(string appliance = "furnace-1", string id = "far", string quantity = "temperature") =>
        new() { Appliance = appliance, Channel = SomeStudio.Channel(id, quantity) with { Topic = "furnace/x" }, AddedAt = "2026-03-02T08:00:00Z" };

    StudioPlan Plan(string file) => PlanBuilder.Build(ConfigurationFile.Read(file), folder.Path);

    [Fact]
    public void An_added_channel_is_read_after_the_file_which_stays_as_it_was_written()
    {
        var file = Write();
        var before = File.ReadAllText(file);
        AddedChannels.Write(Data, [Far()]);
        var plan = Plan(file);
        Assert.Equal("furnace/x", plan.Channels.Find("furnace-1/far")!.Topic);
        Assert.True(AddedChannels.InForce(plan, Far()));
        Assert.Equal(before, File.ReadAllText(file));
    }

    [Fact]
    public void The_file_goes_before_what_was_added_and_an_appliance_that_is_gone_takes_its_channel_along()
    {
        AddedChannels.Write(Data, [Far(id: "crown"), Far(appliance: "furnace-9")]);
        var plan = Plan(Write());
        Assert.Equal("hotshop/quillmere/furnace-1/crown", plan.Channels.Find("furnace-1/crown")!.Topic);
        Assert.All(AddedChannels.Read(Data), a => Assert.False(AddedChannels.InForce(plan, a)));
    }

    [Fact]
    public void A_wrong_channel_in_the_added_ones_is_told_with_their_file()
    {
        AddedChannels.Write(Data, [Far(quantity: "warmth")]);
        var problem = Assert.Single(Assert.Throws<ConfigurationException>(() => ConfigurationFile.Read(Write())).Problems);
        Assert.StartsWith(AddedChannels.PathIn(Data), problem.Where, StringComparison.Ordinal);
        Assert.Contains("warmth", problem.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_damaged_file_of_added_channels_is_told_and_not_passed_over()
    {
        Directory.CreateDirectory(Data);
        File.WriteAllText(AddedChannels.PathIn(Data), "[{");
        Assert.Contains("add the channels again", Assert.Throws<ConfigurationException>(() => ConfigurationFile.Read(Write())).Message, StringComparison.Ordinal);
    }
}
