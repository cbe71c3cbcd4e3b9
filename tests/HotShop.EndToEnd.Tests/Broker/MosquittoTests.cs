using System.Globalization;
using System.Text;
using HotShop.Monitor.Tests.Broker;
using MQTTnet;
using MQTTnet.Formatter;
using Xunit;

namespace HotShop.EndToEnd.Tests.Broker;

public class MosquittoTests
{
    const string Crown = "hotshop/quillmere/furnace-1/crown";

    static IEnumerable<string> Readings(int from, int count) => Enumerable.Range(from, count).Select(i => i.ToString(CultureInfo.InvariantCulture));

    static IEnumerable<int> Values(FakeIntake intake) => intake.Accepted.Select(m => int.Parse(Encoding.UTF8.GetString(m.Payload), CultureInfo.InvariantCulture));

    [Fact]
    public async Task What_was_sent_while_the_service_was_away_is_all_there_when_it_returns()
    {
        await using var mosquitto = await Mosquitto.Start();
        await using (var before = await OutsideStudio.StartWorking(mosquitto))
            Assert.Equal("online", mosquitto.Retained("hotshop/quillmere/out/service"));
        Assert.Equal("offline", mosquitto.Retained("hotshop/quillmere/out/service"));

        // More than the thousand that the broker's own default would keep.
        mosquitto.Publish(Crown, Readings(0, 2500));
        await using var after = await OutsideStudio.StartWorking(mosquitto);
        await after.Stored(2500);
        Assert.Equal(Enumerable.Range(0, 2500), Values(after.Intake));
        Assert.DoesNotContain(after.Intake.Accepted, m => m.Retained);
    }

    [Fact]
    public async Task Many_readings_wait_for_one_commit_and_none_is_acknowledged_before_it()
    {
        await using var mosquitto = await Mosquitto.Start();
        var intake = new FakeIntake();
        await using (var first = await OutsideStudio.StartWorking(mosquitto, intake: intake))
        {
            intake.Hold();
            mosquitto.Publish(Crown, Readings(0, 500));
            for (var i = 0; i < 500; i++) await intake.Next();
            Assert.Empty(intake.Accepted);
        }
        // Ended before the commit: all come again.
        var second = new FakeIntake();
        await using var again = await OutsideStudio.StartWorking(mosquitto, intake: second);
        await again.Stored(500);
        Assert.Equal(Enumerable.Range(0, 500), Values(second).Distinct());
        Assert.Equal(500, again.Counters.Snapshot().Redelivered);
    }

    [Fact]
    public async Task A_reading_the_store_could_not_take_comes_again()
    {
        await using var mosquitto = await Mosquitto.Start();
        await using var studio = await OutsideStudio.StartWorking(mosquitto);
        studio.Intake.FailNext(1);
        mosquitto.Publish(Crown, Readings(0, 50));
        await Patience.Until(() => Values(studio.Intake).Distinct().Count() == 50, "all fifty are stored");
        await studio.Working();
        var counts = studio.Counters.Snapshot();
        Assert.True(counts.Redelivered >= 1);
        Assert.Equal((1, 0), (counts.NotAccepted, counts.Dropped));
    }

    [Fact]
    public async Task A_last_value_kept_by_the_broker_is_not_taken_as_fresh()
    {
        await using var mosquitto = await Mosquitto.Start();
        mosquitto.Publish(Crown, ["1400"], retain: true);
        await using var studio = await OutsideStudio.StartWorking(mosquitto);
        await studio.Stored(1);
        Assert.True(studio.Intake.Accepted[0].Retained);
    }

    [Theory, InlineData("hotshop", "wrong"), InlineData("nobody", "glass-and-gas")]
    public async Task A_wrong_password_is_told_in_plain_words(string user, string password)
    {
        await using var mosquitto = await Mosquitto.Start();
        File.WriteAllText(mosquitto.At("other.password"), password);
        await using var studio = await OutsideStudio.Start(mosquitto, mosquitto.Options(user, "other.password"));
        await studio.Trouble($"it refuses user '{user}': check broker.user, and the password");
    }

    [Fact]
    public async Task A_broker_that_restarts_is_found_again_and_nothing_is_missed()
    {
        await using var mosquitto = await Mosquitto.Start();
        await using var studio = await OutsideStudio.StartWorking(mosquitto);
        mosquitto.Publish(Crown, Readings(0, 10));
        await studio.Stored(10);
        await mosquitto.Stop();
        await studio.Trouble("no connection to 127.0.0.1");
        await mosquitto.StartAgain();
        await studio.Working();
        mosquitto.Publish(Crown, Readings(10, 10));
        await studio.Stored(20);
        Assert.Equal(Enumerable.Range(0, 20), Values(studio.Intake));
    }

    [Fact]
    public async Task A_dead_line_is_noticed_although_the_connection_stands()
    {
        await using var mosquitto = await Mosquitto.Start();
        await using var studio = await OutsideStudio.StartWorking(mosquitto);
        mosquitto.Freeze();
        await studio.Trouble("no connection to 127.0.0.1");
        mosquitto.Thaw();
        await studio.Working();
    }

    [Fact]
    public async Task A_connection_that_delivers_nothing_is_trouble()
    {
        // Mosquitto grants a subscription without the right to read, and stays silent.
        await using var mosquitto = await Mosquitto.Start(aclInstead: "user hotshop\ntopic write hotshop/quillmere/out/#\n");
        await using var studio = await OutsideStudio.Start(mosquitto);
        await studio.Trouble("what the service publishes does not come back");
    }

    [Fact]
    public async Task A_broker_that_does_not_let_the_service_publish_is_trouble()
    {
        await using var mosquitto = await Mosquitto.Start(aclInstead: "user hotshop\ntopic read hotshop/quillmere/#\n");
        await using var studio = await OutsideStudio.Start(mosquitto);
        await studio.Trouble("ask whoever runs the broker for the right to write hotshop/quillmere/out/#");
    }

    [Fact]
    public async Task A_second_service_with_the_same_id_is_named()
    {
        await using var mosquitto = await Mosquitto.Start();
        await using var studio = await OutsideStudio.StartWorking(mosquitto);
        using var twin = new MqttClientFactory().CreateMqttClient();
        var id = File.ReadAllText(Path.Combine(mosquitto.Folder, "data", "broker-client-id")).Trim();
        await twin.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", mosquitto.Port).WithClientId(id).WithProtocolVersion(MqttProtocolVersion.V500)
            .WithCredentials(Mosquitto.ServiceUser, Mosquitto.ServicePassword).Build(), TestContext.Current.CancellationToken);
        // This broker says nothing when it hands a session over; one that does is told apart in the tests of the client.
        await studio.Trouble($"another client may be using the id '{id}'");
    }

    [Fact]
    public async Task A_topic_taken_out_of_the_configuration_is_taken_out_of_the_session()
    {
        await using var mosquitto = await Mosquitto.Start(aclInstead: "user hotshop\ntopic readwrite #\nuser furnace\ntopic readwrite #\n");
        await (await OutsideStudio.StartWorking(mosquitto)).DisposeAsync();
        var topics = Path.Combine(mosquitto.Folder, "data", "broker-subscriptions");
        Assert.Equal(["hotshop/quillmere/#", "gadget/7/state"], await File.ReadAllLinesAsync(topics, TestContext.Current.CancellationToken));

        // As an earlier configuration left it: with one topic more.
        using (var earlier = new MqttClientFactory().CreateMqttClient())
        {
            var id = File.ReadAllText(Path.Combine(mosquitto.Folder, "data", "broker-client-id")).Trim();
            await earlier.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", mosquitto.Port).WithClientId(id).WithProtocolVersion(MqttProtocolVersion.V500).WithCleanStart(false)
                .WithSessionExpiryInterval(3600).WithCredentials(Mosquitto.ServiceUser, Mosquitto.ServicePassword).Build(), TestContext.Current.CancellationToken);
            await earlier.SubscribeAsync(new MqttClientSubscribeOptionsBuilder().WithTopicFilter("old/sensor").Build(), TestContext.Current.CancellationToken);
            await earlier.DisconnectAsync(new MqttClientDisconnectOptions(), TestContext.Current.CancellationToken);
        }
        await File.AppendAllTextAsync(topics, "old/sensor\n", TestContext.Current.CancellationToken);

        await using var studio = await OutsideStudio.StartWorking(mosquitto);
        mosquitto.Publish("old/sensor", ["1"]);
        mosquitto.Publish("gadget/7/state", ["2"]);
        await studio.Stored(1);
        Assert.Equal([2], Values(studio.Intake));
    }

    [Fact]
    public async Task With_TLS_the_studios_own_authority_is_trusted_and_no_other()
    {
        await using var mosquitto = await Mosquitto.Start(isTls: true);
        await using (var trusted = await OutsideStudio.StartWorking(mosquitto, mosquitto.Options(more: ", \"tls\": true, \"caFile\": \"ca.pem\"")))
            Assert.Contains("receiving", trusted.State.Detail, StringComparison.Ordinal);
        await using var untrusted = await OutsideStudio.Start(mosquitto, mosquitto.Options(more: ", \"tls\": true"));
        await untrusted.Trouble("its TLS certificate is not accepted");
    }
}
