using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Configuration;

/// <summary>The meters of a studio make a tree, or the configuration says what is wrong with it.</summary>
public sealed class MeterCheckTests
{
    static readonly ChannelOptions Volume = SomeStudio.Channel("meter", "gas-volume");

    static IReadOnlyList<string> Problems(StudioConfiguration configuration) => [.. ConfigurationCheck.Problems(configuration, "hotshop.json").Select(p => p.ToString())];

    static StudioConfiguration Shop(params ChannelOptions[] meters) => SomeStudio.With("shop", a => a with { Channels = meters });

    [Fact]
    public void Two_main_meters_of_one_kind_are_refused_and_one_told_to_say_what_it_serves()
    {
        var problem = Assert.Single(Problems(Shop(Volume, Volume with { Id = "second" })));
        Assert.Contains("shop/meter and shop/second would both be the main meter of gas", problem, StringComparison.Ordinal);
        Assert.Contains("serves", problem, StringComparison.Ordinal);
    }

    [Fact]
    public void A_gas_meter_and_an_electric_one_are_two_main_meters_in_order() =>
        Assert.Empty(Problems(Shop(Volume, SomeStudio.Channel("electric", "energy"))));

    [Fact]
    public void A_meter_cannot_lie_behind_itself()
    {
        var problems = Problems(Shop(Volume with { Id = "a", Parent = "shop/b", Serves = ["furnace-1"] }, Volume with { Id = "b", Parent = "shop/a", Serves = ["furnace-1"] }));
        Assert.Equal(2, problems.Count(p => p.Contains("would lie behind itself", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("shop/nowhere", "there is no meter 'shop/nowhere'")]
    [InlineData("annealer-3/energy", "meters electricity, this one gas")]
    [InlineData("furnace-1/gas-flow", "does not serve all that")]
    public void A_parent_that_cannot_be_is_named(string parent, string says) =>
        Assert.Contains(Problems(Shop(Volume with { Parent = parent, Serves = ["glory-hole-1"] })), p => p.Contains(says, StringComparison.Ordinal));

    [Fact]
    public void Serving_an_appliance_that_is_not_there_is_named() =>
        Assert.Contains(Problems(Shop(Volume with { Serves = ["kiln-9"] })), p => p.Contains("there is no appliance 'kiln-9'", StringComparison.Ordinal));

    [Fact]
    public void Two_meters_that_share_one_appliance_and_not_the_rest_are_refused() =>
        Assert.Contains(Problems(Shop(Volume with { Serves = ["furnace-1", "glory-hole-1"] }, Volume with { Id = "b", Serves = ["glory-hole-1", "annealer-1"] })),
            p => p.Contains("each serve something of the other's", StringComparison.Ordinal));

    [Fact]
    public void Only_a_meter_can_be_typed() =>
        Assert.Contains(Problems(SomeStudio.With("furnace-1", "crown", c => c with { Reports = "typed" })), p => p.Contains("temperature cannot be typed", StringComparison.Ordinal));

    [Fact]
    public void A_meter_lies_behind_the_smallest_that_serves_the_same_and_more()
    {
        var configuration = Shop(Volume, Volume with { Id = "hot-end", Serves = ["furnace-1", "glory-hole-1"] });
        Assert.Empty(Problems(configuration));
        var tree = new MeterTree(PlanBuilder.Build(configuration, Path.GetTempPath()));
        Assert.Equal("shop/hot-end", tree.Own(EnergyKind.Gas, "furnace-1")!.Parent!.Id);
        Assert.Equal("shop/meter", tree.Nodes.Single(n => n.Channel.Id == "shop/hot-end").Parent!.Id);
        Assert.Null(tree.Main(EnergyKind.Gas)!.Parent);
    }
}
