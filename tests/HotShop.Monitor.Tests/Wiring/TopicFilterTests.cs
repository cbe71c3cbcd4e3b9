using HotShop.Monitor.Tests.Wire;
using HotShop.Monitor.Wire;
using Xunit;

namespace HotShop.Monitor.Tests.Wiring;

public class TopicFilterTests
{
    // MQTT 5.0 (OASIS 2019), 4.7.1.2, 4.7.1.3 and 4.7.2: the standard's own examples.
    [Theory]
    [InlineData("sport/tennis/player1/#", "sport/tennis/player1", true)]
    [InlineData("sport/tennis/player1/#", "sport/tennis/player1/ranking", true)]
    [InlineData("sport/tennis/player1/#", "sport/tennis/player1/score/wimbledon", true)]
    [InlineData("sport/#", "sport", true)]
    [InlineData("sport/tennis/+", "sport/tennis/player1", true)]
    [InlineData("sport/tennis/+", "sport/tennis/player1/ranking", false)]
    [InlineData("sport/+", "sport", false)]
    [InlineData("sport/+", "sport/", true)]
    [InlineData("+/+", "/finance", true)]
    [InlineData("/+", "/finance", true)]
    [InlineData("+", "/finance", false)]
    [InlineData("#", "$SYS/monitor/Clients", false)]
    [InlineData("+/monitor/Clients", "$SYS/monitor/Clients", false)]
    public void A_filter_takes_the_topics_the_standard_says(string filter, string topic, bool takes) => Assert.Equal(takes, TopicFilter.Covers(filter, topic));

    [Theory]
    [InlineData("#", "meters/#", true)]
    [InlineData("meters/#", "meters/+/state", true)]
    [InlineData("meters/+/state", "meters/#", false)]
    [InlineData("meters/+", "meters/#", false)]
    [InlineData("meters/+/#", "meters/main/#", true)]
    public void A_filter_covers_a_narrower_one(string wide, string narrow, bool covers) => Assert.Equal(covers, TopicFilter.Covers(wide, narrow));

    // The same section's examples of what is not valid.
    [Theory]
    [InlineData("sport/tennis#"), InlineData("sport/tennis/#/ranking"), InlineData("sport+"), InlineData(""), InlineData("$SYS/#")]
    public void What_is_no_filter_is_told_so(string filter) => Assert.NotNull(TopicFilter.ProblemWith(filter));

    [Theory]
    [InlineData("#"), InlineData("+"), InlineData("+/tennis/#"), InlineData("sport/+/player1"), InlineData("/+")]
    public void What_is_a_filter_has_no_problem(string filter) => Assert.Null(TopicFilter.ProblemWith(filter));

    [Fact]
    public void No_subscription_is_covered_by_another_so_that_no_message_comes_twice()
    {
        var channels = new ChannelDirectory("hotshop", "quillmere", ["furnace-1"],
            [SomeChannels.Plan("crown", Quantity.Temperature), SomeChannels.Plan("far", Quantity.Temperature) with { Topic = "zigbee/far" }, SomeChannels.Plan("near", Quantity.Temperature) with { Topic = "lab/near" }],
            listenAlso: ["zigbee/#", "zigbee/+/state"]);
        Assert.Equal(["hotshop/quillmere/#", "lab/near", "zigbee/#"], channels.Subscriptions().Order(StringComparer.Ordinal));
        Assert.Equal(["#"], new ChannelDirectory("hotshop", "quillmere", [], channels.All, listenAlso: ["#"]).Subscriptions());
    }
}
