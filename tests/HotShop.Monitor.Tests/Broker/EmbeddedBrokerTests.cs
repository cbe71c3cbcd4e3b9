using System.Net;
using System.Net.NetworkInformation;
using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using MQTTnet;
using MQTTnet.Formatter;
using Xunit;

namespace HotShop.Monitor.Tests.Broker;

public class EmbeddedBrokerTests
{
    const string Crown = "hotshop/quillmere/furnace-1/crown";

    [Theory, InlineData(MqttProtocolVersion.V311), InlineData(MqttProtocolVersion.V500)]
    public async Task A_reading_is_acknowledged_only_once_it_is_stored(MqttProtocolVersion version)
    {
        await using var studio = await EmbeddedStudio.Start();
        var device = await studio.Device("probe-1", version: version);
        studio.Intake.Hold();
        var sending = device.Send(Crown, "1148.6");
        await studio.Intake.Next();
        Assert.False(sending.IsCompleted);
        studio.Intake.Release();
        Assert.True((await Patience.For(sending)).IsSuccess);
        Assert.Equal((Crown, "1148.6", "probe-1"), (studio.Intake.Accepted[0].Topic, Encoding.UTF8.GetString(studio.Intake.Accepted[0].Payload), studio.Intake.Accepted[0].Sender));
    }

    [Fact]
    public async Task A_message_sent_again_carries_the_number_it_had_so_that_a_press_without_an_id_is_known_again()
    {
        await using var studio = await EmbeddedStudio.Start();
        using (var first = await RawDevice.Connect(studio.Port))
        {
            await first.Publish("hotshop/quillmere/furnace-1/pedal", "1", id: 4711);
            await first.Answer(4);
        }
        using var again = await RawDevice.Connect(studio.Port);
        await again.Publish("hotshop/quillmere/furnace-1/pedal", "1", id: 4711, isAgain: true);
        await again.Answer(4);
        Assert.Equal([((ushort?)4711, false, "d"), (4711, true, "d")], studio.Intake.Accepted.Select(m => (m.PacketNumber, m.Redelivered, m.Sender)));
    }

    [Theory, InlineData(MqttProtocolVersion.V311), InlineData(MqttProtocolVersion.V500)]
    public async Task A_reading_the_store_cannot_take_is_not_acknowledged_and_can_be_sent_again(MqttProtocolVersion version)
    {
        await using var studio = await EmbeddedStudio.Start();
        var device = await studio.Device("probe-1", version: version);
        var gone = new TaskCompletionSource();
        device.DisconnectedAsync += _ => { gone.TrySetResult(); return Task.CompletedTask; };
        studio.Intake.FailNext(1);
        await Assert.ThrowsAnyAsync<Exception>(() => Patience.For(device.Send(Crown, "1148.6")));
        await Patience.For(gone.Task);
        Assert.Empty(studio.Intake.Accepted);

        var again = await studio.Device("probe-1", version: version);
        Assert.True((await Patience.For(again.Send(Crown, "1148.6"))).IsSuccess);
        Assert.Single(studio.Intake.Accepted);
        var counts = studio.Counters.Snapshot();
        Assert.Equal((2, 1, 0), (counts.Received, counts.NotAccepted, counts.Dropped));
    }

    [Fact]
    public async Task A_message_sent_again_by_a_device_is_counted_as_such()
    {
        await using var studio = await EmbeddedStudio.Start();
        using var socket = await RawDevice.Connect(studio.Port);
        await socket.Publish(Crown, "1148", id: 7, isAgain: true);
        Assert.Equal([0x40, 2, 0, 7], await socket.Answer(4));
        Assert.True(Assert.Single(studio.Intake.Accepted).Redelivered);
        Assert.Equal(1, studio.Counters.Snapshot().Redelivered);
    }

    [Fact]
    public async Task One_connection_sends_on_while_the_disk_is_slow_and_is_acknowledged_in_order()
    {
        await using var studio = await EmbeddedStudio.Start();
        using var socket = await RawDevice.Connect(studio.Port);
        studio.Intake.Hold();
        for (var id = 1; id <= 200; id++) await socket.Publish(Crown, "1148", id);
        for (var id = 1; id <= 200; id++) await studio.Intake.Next();
        Assert.Empty(studio.Intake.Accepted);
        Assert.False(socket.HasAnswer);
        studio.Intake.Release();
        for (var id = 1; id <= 200; id++) Assert.Equal([0x40, 2, 0, (byte)id], await socket.Answer(4));
    }

    [Fact]
    public async Task After_a_reading_that_could_not_be_stored_none_is_acknowledged_on_that_connection()
    {
        await using var studio = await EmbeddedStudio.Start();
        using var socket = await RawDevice.Connect(studio.Port);
        studio.Intake.Hold();
        studio.Intake.FailNext(1);
        for (var id = 1; id <= 10; id++) await socket.Publish(Crown, "1148", id);
        for (var id = 1; id <= 10; id++) await studio.Intake.Next();
        studio.Intake.Release();
        await Assert.ThrowsAsync<EndOfStreamException>(() => socket.Answer(1));
        await Patience.Until(() => studio.Intake.Accepted.Count == 9, "the others are stored all the same, and will be known when they come again");
    }

    [Fact]
    public async Task A_busy_device_is_not_taken_for_a_silent_one()
    {
        await using var studio = await EmbeddedStudio.Start();
        using var socket = await RawDevice.Connect(studio.Port, keepAliveSeconds: 1);
        var clock = new RealClock();
        var since = clock.GetTimestamp();
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(200), clock);
        // Three keep-alive times; a broker may close after one and a half.
        for (var id = 1; clock.GetElapsedTime(since) < TimeSpan.FromSeconds(3); id++)
        {
            await tick.WaitForNextTickAsync(TestContext.Current.CancellationToken);
            await socket.Publish(Crown, "1148", id);
            Assert.Equal(0x40, (await socket.Answer(4))[0]);
        }
    }

    [Fact]
    public async Task There_is_an_end_to_how_many_may_connect()
    {
        await using var studio = await EmbeddedStudio.Start();
        for (var i = 0; i < HotShop.Monitor.Broker.EmbeddedBroker.MostConnections; i++) await studio.Device($"device-{i}");
        await Patience.Until(() => studio.Counters.Snapshot().Connections == HotShop.Monitor.Broker.EmbeddedBroker.MostConnections, "all are counted");
        var (_, result) = await studio.Connect(studio.Options("one-more"));
        Assert.Equal(MqttClientConnectResultCode.QuotaExceeded, result.ResultCode);
        Assert.Contains("connections already", Assert.Single(studio.Counters.Snapshot().Denials).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lost_reading_that_nobody_will_send_again_is_counted_as_lost()
    {
        await using var studio = await EmbeddedStudio.Start();
        var device = await studio.Device("probe-1");
        studio.Intake.FailNext(1);
        await device.Send(Crown, "1148.6", atMostOnce: true);
        await Patience.Until(() => studio.Counters.Snapshot().Dropped == 1, "the lost message is counted");
    }

    [Fact]
    public async Task A_device_that_sends_with_RETAIN_is_flagged_and_listed_with_what_to_change()
    {
        await using var studio = await EmbeddedStudio.Start();
        var device = await studio.Device("probe-1");
        await device.Send(Crown, "1148.6", retain: true);
        Assert.True((await studio.Intake.Next()).Retained);
        Assert.Equal(1, studio.Counters.Snapshot().Retained);
        Assert.Contains("switch RETAIN off", Assert.Single(studio.Counters.Snapshot().Denials).Reason, StringComparison.Ordinal);
        Assert.Null(await Retained(studio, Crown));
    }

    [Theory, InlineData(MqttProtocolVersion.V311), InlineData(MqttProtocolVersion.V500)]
    public async Task A_device_speaks_for_its_own_appliance_only(MqttProtocolVersion version)
    {
        await using var studio = await EmbeddedStudio.Start(devices: EmbeddedStudio.TwoDevices);
        var device = await studio.Device("couple", "furnace", "fire-and-sand", version);
        string[] denied = ["hotshop/quillmere/annealer-1/chamber", "hotshop/quillmere/out/service", "hotshop/quillmere/out/furnace-1/crown", "gadget/7/state", "hotshop/elsewhere/furnace-1/crown", "hotshop/quillmere/furnace-1"];
        foreach (var topic in denied)
        {
            var result = await Patience.For(device.Send(topic, "1"));
            // 3.1.1 cannot say no: only the list on the health page shows it.
            Assert.Equal(version == MqttProtocolVersion.V311, result.IsSuccess);
        }
        Assert.True((await Patience.For(device.Send(Crown, "1148.6"))).IsSuccess);
        Assert.Equal([Crown], studio.Intake.Accepted.Select(m => m.Topic));
        var counts = studio.Counters.Snapshot();
        Assert.Equal((denied.Length, denied.Length), ((int)counts.DeniedPublishes, counts.Denials.Count));
        Assert.All(counts.Denials, d => Assert.Equal(("couple", "furnace"), (d.Client, d.User)));
    }

    [Fact]
    public async Task A_device_turned_away_on_a_topic_of_its_own_is_remembered_so_that_somebody_can_take_it_in()
    {
        await using var studio = await EmbeddedStudio.Start(devices: EmbeddedStudio.TwoDevices);
        var device = await studio.Device("new", "furnace", "fire-and-sand");
        Assert.False((await Patience.For(device.Send("furnace/x", "1148"))).IsSuccess);
        Assert.False((await Patience.For(device.Send("hotshop/quillmere/annealer-1/chamber", "480"))).IsSuccess);
        Assert.False((await Patience.For(device.Send("gadget/7/state", "1"))).IsSuccess);
        var topic = Assert.Single(studio.Unknown.All);
        Assert.Equal(("furnace/x", "furnace", "1148"), (topic.Topic, topic.Sender, System.Text.Encoding.UTF8.GetString(topic.Payload!)));
        Assert.Contains("user 'furnace' may publish for furnace-1 only", topic.TurnedAway, StringComparison.Ordinal);
        Assert.Empty(studio.Intake.Accepted);
    }

    [Fact]
    public async Task A_foreign_topic_belongs_to_the_appliance_whose_channel_listens_to_it()
    {
        await using var studio = await EmbeddedStudio.Start(devices: EmbeddedStudio.TwoDevices);
        var device = await studio.Device("gadget", "annealer", "slow-and-cool");
        Assert.True((await Patience.For(device.Send("gadget/7/state", """{"open":true}"""))).IsSuccess);
        Assert.Equal("annealer", Assert.Single(studio.Intake.Accepted).Sender);
    }

    [Theory, InlineData("#", false), InlineData("hotshop/quillmere/annealer-1/#", false), InlineData("hotshop/+/furnace-1/#", false), InlineData("$SYS/#", false),
        InlineData("hotshop/quillmere/out/#", true), InlineData("hotshop/quillmere/furnace-1/log", true)]
    public async Task A_device_reads_its_own_appliance_and_what_the_service_publishes(string filter, bool isGranted)
    {
        await using var studio = await EmbeddedStudio.Start(devices: EmbeddedStudio.TwoDevices);
        var device = await studio.Device("screen", "furnace", "fire-and-sand");
        var result = await device.SubscribeAsync(new MqttClientSubscribeOptionsBuilder().WithTopicFilter(filter).Build(), TestContext.Current.CancellationToken);
        Assert.Equal(isGranted ? MqttClientSubscribeResultCode.GrantedQoS0 : MqttClientSubscribeResultCode.NotAuthorized, Assert.Single(result.Items).ResultCode);
        Assert.Equal(isGranted ? 0 : 1, studio.Counters.Snapshot().DeniedSubscriptions);
    }

    [Theory, InlineData("furnace", "wrong"), InlineData("furnace", ""), InlineData("nobody", "fire-and-sand"), InlineData("furnace", "slow-and-cool"), InlineData(null, "")]
    public async Task A_wrong_password_does_not_get_in(string? user, string password)
    {
        await using var studio = await EmbeddedStudio.Start(devices: EmbeddedStudio.TwoDevices);
        var options = studio.Options("stranger");
        var (_, result) = await studio.Connect(user is null ? options : options.WithCredentials(user, password));
        Assert.Equal(MqttClientConnectResultCode.BadUserNameOrPassword, result.ResultCode);
        Assert.Equal(1, studio.Counters.Snapshot().RefusedConnections);
    }

    [Fact]
    public async Task On_loopback_the_network_cannot_reach_it()
    {
        await using var studio = await EmbeddedStudio.Start();
        var listening = IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(l => l.Port == studio.Port).ToList();
        Assert.Equal([IPAddress.Loopback], listening.Select(l => l.Address));
    }

    [Fact]
    public async Task Beyond_loopback_it_listens_where_it_is_told()
    {
        await using var studio = await EmbeddedStudio.Start("0.0.0.0", EmbeddedStudio.TwoDevices);
        var listening = IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(l => l.Port == studio.Port).ToList();
        Assert.Equal([IPAddress.Any], listening.Select(l => l.Address));
    }

    [Fact]
    public async Task A_port_that_is_taken_is_trouble_until_it_is_free()
    {
        await using var first = await EmbeddedStudio.Start();
        using var folder = new TemporaryFolder();
        var health = new HealthBoard();
        using var counters = new HotShop.Monitor.Broker.BrokerCounters();
        using var second = new HotShop.Monitor.Broker.EmbeddedBroker(SomePlan.With($$"""{ "listen": "127.0.0.1:{{first.Port}}" }""", folder.Path), first.Intake, new(), health, counters,
            new RealClock(), Microsoft.Extensions.Logging.Abstractions.NullLogger<HotShop.Monitor.Broker.EmbeddedBroker>.Instance);
        await second.StartAsync(TestContext.Current.CancellationToken);
        await Patience.Until(() => health.Of(HealthBoard.Broker) is { IsWorking: false }, "the second broker is in trouble");
        Assert.Contains($"cannot listen on 127.0.0.1:{first.Port}", health.Of(HealthBoard.Broker)!.Detail, StringComparison.Ordinal);
        await first.Broker.StopAsync(TestContext.Current.CancellationToken);
        await Patience.Until(() => health.IsWorking(HealthBoard.Broker), "the second broker has the port");
        await second.StopAsync(TestContext.Current.CancellationToken);
    }

    [Fact]
    public async Task A_subscriber_that_does_not_keep_up_loses_the_oldest_and_it_is_counted()
    {
        await using var studio = await EmbeddedStudio.Start();
        using var reader = await RawDevice.Connect(studio.Port);
        await reader.Subscribe("hotshop/quillmere/furnace-1/#");
        var device = await studio.Device("probe-1");
        // It never reads: what the sockets hold is full after some megabytes, and the queue of a thousand after that.
        var large = new string(' ', 60_000) + "1148";
        for (var i = 0; i < 3000 && studio.Counters.Snapshot().Dropped == 0; i++) await device.Send(Crown, large);
        await Patience.Until(() => studio.Counters.Snapshot().Dropped > 0, "dropped messages are counted");
        Assert.True((await Patience.For(device.Send(Crown, "1148"))).IsSuccess);
    }

    [Fact]
    public async Task A_missing_password_file_is_named()
    {
        var wrong = await Assert.ThrowsAsync<ConfigurationException>(() =>
            EmbeddedStudio.Start(devices: """[ { "user": "furnace", "passwordFile": "gone.password", "appliances": ["furnace-1"] } ]"""));
        Assert.Contains("gone.password cannot be read", wrong.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_service_publishes_is_there_for_whoever_comes_later()
    {
        await using var studio = await EmbeddedStudio.Start(devices: EmbeddedStudio.TwoDevices);
        studio.Out.Value("furnace-1", "crown", 1148.6, "Cel", NodaTime.Instant.FromUtc(2026, 3, 1, 2, 13), 2.5);
        Assert.Equal("online", await Retained(studio, "hotshop/quillmere/out/service"));
        Assert.Equal("""{"value":1148.6,"unit":"Cel","time":"2026-03-01T02:13:00Z","uncertainty":2.5}""", await Retained(studio, "hotshop/quillmere/out/furnace-1/crown"));
        Assert.Empty(studio.Intake.Accepted);
    }

    static async Task<string?> Retained(EmbeddedStudio studio, string topic)
    {
        var options = studio.Options("reader");
        var (reader, _) = await studio.Connect(options.WithCredentials("furnace", "fire-and-sand"));
        var seen = new TaskCompletionSource<string?>();
        reader.ApplicationMessageReceivedAsync += e =>
        {
            seen.TrySetResult(e.ApplicationMessage.ConvertPayloadToString());
            return Task.CompletedTask;
        };
        await reader.SubscribeAsync(new MqttClientSubscribeOptionsBuilder().WithTopicFilter(topic).Build(), TestContext.Current.CancellationToken);
        // A retained message comes right behind the SUBACK; the ping's answer comes behind both.
        if (topic.Contains("/out/", StringComparison.Ordinal)) return await Patience.For(seen.Task);
        await reader.PingAsync(TestContext.Current.CancellationToken);
        return seen.Task.IsCompleted ? await seen.Task : null;
    }
}
