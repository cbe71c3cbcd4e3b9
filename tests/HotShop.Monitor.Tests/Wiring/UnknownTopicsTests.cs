using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using HotShop.Monitor.Wiring;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Wiring;

public class UnknownTopicsTests
{
    static Task Say(OpenStudio studio, string topic, string payload, bool retained = false) =>
        studio.The<IIntake>().Accept(new IncomingMessage(topic, Encoding.UTF8.GetBytes(payload), retained, Redelivered: false, studio.Now, "gadget"), default);

    static UnknownTopics Of(OpenStudio studio) => studio.The<UnknownTopics>();

    [Fact]
    public async Task A_strange_topic_is_remembered_with_its_count_and_last_payload_and_told_once()
    {
        await using var studio = OpenStudio.Open();
        for (var i = 0; i < 5; i++)
        {
            await Say(studio, "furnace/x", $"{1148 + i}");
            studio.Now += Duration.FromSeconds(10);
        }
        var topic = Assert.Single(Of(studio).All);
        Assert.Equal(("furnace/x", 5L, "1152", OpenStudio.Start), (topic.Topic, topic.Count, Encoding.UTF8.GetString(topic.Payload!), topic.Since));
        Assert.Equal("furnace/x", Assert.Single(studio.Refused).Topic);
    }

    [Fact]
    public async Task A_misspelt_topic_of_the_studio_is_refused_every_time_and_remembered_as_well()
    {
        await using var studio = OpenStudio.Open();
        for (var i = 0; i < 3; i++) await Say(studio, "hotshop/quillmere/furnace-1/crwn", "1148");
        Assert.Equal(3, studio.Refused.Count);
        Assert.Equal(3, Assert.Single(Of(studio).All).Count);
    }

    [Fact]
    public async Task What_only_the_wider_subscription_brings_leaves_no_trace_on_the_disk()
    {
        await using var studio = OpenStudio.Open(SomeStudio.Configuration with { Broker = new() { Mode = "outside", Host = "broker.lan", ListenAlso = ["#"] } });
        for (var i = 0; i < 500; i++) await Say(studio, $"house/lamp-{i}", "on");
        Assert.Empty(studio.Refused);
        Assert.Equal(UnknownTopics.Most, Of(studio).All.Count);
        await Say(studio, "hotshop/quillmere/furnace-1/crwn", "1148");
        Assert.Single(studio.Refused);
    }

    [Fact]
    public async Task The_longest_silent_topics_make_room_for_new_ones()
    {
        await using var studio = OpenStudio.Open();
        for (var i = 0; i < UnknownTopics.Most + 50; i++)
        {
            await Say(studio, $"lamp/{i}", "on");
            studio.Now += Duration.FromSeconds(1);
            await Say(studio, "furnace/x", "1148");
        }
        Assert.Equal(UnknownTopics.Most, Of(studio).All.Count);
        Assert.Equal(UnknownTopics.Most + 50, Of(studio).Find("furnace/x")!.Count);
        Assert.Null(Of(studio).Find("lamp/0"));
    }

    [Fact]
    public async Task A_giant_payload_or_topic_takes_no_room()
    {
        await using var studio = OpenStudio.Open();
        await Say(studio, "big/payload", new string('9', UnknownTopics.LargestPayload + 1));
        await Say(studio, new string('t', UnknownTopics.LongestTopic + 1), "1");
        var only = Assert.Single(Of(studio).All);
        Assert.Equal((null, UnknownTopics.LargestPayload + 1), (only.Payload, only.PayloadBytes));
    }

    [Fact]
    public async Task The_other_values_of_a_bundle_stay_on_offer_and_readings_go_their_way()
    {
        var foreign = SomeStudio.Channel("far", "temperature") with { Topic = "gadget/7", ValuePointer = "/t" };
        await using var studio = OpenStudio.Open(SomeStudio.With("furnace-1", a => a with { Channels = [.. a.Channels, foreign] }));
        await Say(studio, "gadget/7", """{"t":1148.5,"flame":true}""");
        Assert.Equal(1148.5, Assert.Single(studio.Raw("furnace-1/far")).Value);
        Assert.Empty(studio.Refused);
        var answer = Assert.Single(studio.The<WiringAnswers>().All().Topics);
        Assert.Equal("furnace-1/far", Assert.Single(answer.InUse));
        Assert.Equal("/flame", Assert.Single(answer.Candidates).ValuePointer);
    }

    [Fact]
    public async Task A_last_value_kept_by_the_broker_shows_a_device_but_says_nothing_of_its_habit()
    {
        await using var studio = OpenStudio.Open();
        await Say(studio, "furnace/x", "1148", retained: true);
        var topic = Assert.Single(Of(studio).All);
        Assert.True(topic.IsLastValue);
        Assert.Empty(topic.Arrivals);
    }
}
