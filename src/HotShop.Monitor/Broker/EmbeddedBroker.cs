using System.Buffers;
using System.Collections;
using System.Net;
using System.Net.Sockets;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Wire;
using HotShop.Monitor.Wiring;
using MQTTnet;
using MQTTnet.Packets;
using MQTTnet.Protocol;
using MQTTnet.Server;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Broker;

/// <summary>
/// The service as its own MQTT broker. A publish is acknowledged after <see cref="IIntake.Accept"/> has returned, so after the commit (<see cref="DeviceAcknowledgements"/>);
/// when it fails, the connection is closed without acknowledgement, and the device sends again. Holds no queues for others over a restart: who needs those runs an outside broker.
/// </summary>
sealed partial class EmbeddedBroker(
    StudioPlan plan, IIntake intake, UnknownTopics unknown, HealthBoard health, BrokerCounters counters, TimeProvider time, ILogger<EmbeddedBroker> log) : BackgroundService, IBrokerLink
{
    internal const int MostConnections = 200;
    const int PendingPerSubscriber = 1000;

    /// <summary>How long a connection may stay silent before it has introduced itself, and a write may take.</summary>
    static readonly TimeSpan CommunicationTimeout = TimeSpan.FromSeconds(15);

    static readonly object OwnMark = new();
    static readonly Dictionary<string, object> OwnSession = new() { [nameof(OwnMark)] = OwnMark };

    readonly BrokerOptions options = plan.Configuration.Broker;
    readonly string serviceTopic = MqttOutTopics.Service(plan);
    DevicePasswords? passwords;
    MqttServer? server;
    int connected;
    CancellationToken stopping;

    public bool IsConnected => server is { IsStarted: true };

    public event Action? Connected;

    public override Task StartAsync(CancellationToken cancellationToken)
    {
        if (options.Devices.Count > 0) passwords = DevicePasswords.Read(options.Devices, plan.BaseDirectory, plan.Channels);
        return base.StartAsync(cancellationToken);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        stopping = stoppingToken;
        var delay = new ReconnectDelay(Random.Shared.NextDouble);
        while (true)
        {
            try
            {
                await Listen(IPEndPoint.Parse(options.Listen));
                return;
            }
            catch (Exception failure) when (failure is SocketException or IOException)
            {
                var detail = $"cannot listen on {options.Listen}: {failure.Message}. Is another broker or a second service running? End it, or change broker.listen";
                health.Report(HealthBoard.Broker, isWorking: false, detail, Now);
                CannotListen(detail);
            }
            await Task.Delay(delay.AfterFailure().ToTimeSpan(), time, stoppingToken);
        }
    }

    async Task Listen(IPEndPoint endpoint)
    {
        var isV6 = endpoint.AddressFamily == AddressFamily.InterNetworkV6;
        // The library listens on both families unless told otherwise: an address for one leaves the other open to the whole network.
        var built = new MqttServerOptionsBuilder()
            .WithDefaultEndpoint().WithDefaultEndpointPort(endpoint.Port)
            .WithDefaultEndpointBoundIPAddress(isV6 ? IPAddress.None : endpoint.Address)
            .WithDefaultEndpointBoundIPV6Address(isV6 ? endpoint.Address : IPAddress.None)
            .WithDefaultCommunicationTimeout(CommunicationTimeout)
            .WithPersistentSessions(false)
            .WithMaxPendingMessagesPerClient(PendingPerSubscriber)
            .WithPendingMessagesOverflowStrategy(MqttPendingMessagesOverflowStrategy.DropOldestQueuedMessage)
            .Build();
        var starting = new MqttServerFactory().CreateMqttServer(built);
        starting.ValidatingConnectionAsync += Validate;
        starting.InterceptingInboundPacketAsync += packet =>
        {
            if (packet.Packet is MqttPublishPacket publish) Acknowledgements(packet.SessionItems)?.TakeOver(publish);
            return Task.CompletedTask;
        };
        starting.InterceptingPublishAsync += Take;
        starting.InterceptingSubscriptionAsync += CheckSubscription;
        starting.ClientConnectedAsync += _ => Count(+1);
        starting.ClientDisconnectedAsync += gone =>
        {
            Acknowledgements(gone.SessionItems)?.End();
            return Count(-1);
        };
        starting.QueuedApplicationMessageOverwrittenAsync += _ => { counters.Dropped(); return Task.CompletedTask; };
        try
        {
            await starting.StartAsync();
        }
        catch
        {
            starting.Dispose();
            throw;
        }
        server = starting;
        await Publish(serviceTopic, MqttOutTopics.Online, retain: true, CancellationToken.None);
        Report();
        Listening(options.Listen, passwords is null ? "without passwords" : $"for {options.Devices.Count} devices with passwords");
        Connected?.Invoke();
    }

    Task Validate(ValidatingConnectionEventArgs connection)
    {
        var access = passwords is null ? DeviceAccess.Anybody(plan.Channels) : passwords.Check(connection.UserName, connection.RawPassword);
        if (access is null)
        {
            connection.ReasonCode = MqttConnectReasonCode.BadUserNameOrPassword;
            counters.ConnectionRefused(connection.ClientId, connection.UserName, "wrong user or password: compare with broker.devices in the configuration", Now);
        }
        else if (Volatile.Read(ref connected) >= MostConnections)
        {
            connection.ReasonCode = MqttConnectReasonCode.QuotaExceeded;
            counters.ConnectionRefused(connection.ClientId, connection.UserName, $"there are {MostConnections} connections already", Now);
        }
        else if (string.IsNullOrEmpty(connection.ClientId) && connection.ProtocolVersion == MQTTnet.Formatter.MqttProtocolVersion.V500)
            connection.AssignedClientIdentifier = $"device-{Guid.NewGuid():n}";
        connection.SessionItems[nameof(DeviceAccess)] = access;
        var client = connection.ClientId;
        connection.SessionItems[nameof(DeviceAcknowledgements)] =
            new DeviceAcknowledgements(connection.ChannelAdapter, (failure, sentWith, topic) => NotAccepted(failure, sentWith, topic, client));
        return Task.CompletedTask;
    }

    static DeviceAcknowledgements? Acknowledgements(IDictionary session) => session[nameof(DeviceAcknowledgements)] as DeviceAcknowledgements;

    async Task Take(InterceptingPublishEventArgs publish)
    {
        if (ReferenceEquals(publish.SessionItems[nameof(OwnMark)], OwnMark)) return;
        var message = publish.ApplicationMessage;
        var acknowledgements = Acknowledgements(publish.SessionItems)!;
        var sentWith = acknowledgements.Now is null ? message.QualityOfServiceLevel : MqttQualityOfServiceLevel.AtLeastOnce;
        var access = (DeviceAccess?)publish.SessionItems[nameof(DeviceAccess)];
        var denial = access is null ? "not signed in" : access.DenyPublish(message.Topic);
        if (denial is not null)
        {
            counters.PublishDenied(publish.ClientId, publish.UserName, message.Topic, denial, Now);
            // On a topic of its own a new device shows up on the set-up page; once a channel of its appliance listens, it may speak.
            if (access is not null && plan.Channels.ForTopic(message.Topic).Count == 0 && !plan.Channels.IsOwn(message.Topic) && !message.Topic.StartsWith('$'))
                unknown.TurnedAway(new IncomingMessage(message.Topic, message.Payload.ToArray(), message.Retain, message.Dup, Now, access.User ?? publish.ClientId), denial);
            publish.ProcessPublish = false;
            publish.Response.ReasonCode = MqttPubAckReasonCode.NotAuthorized;
            if (sentWith == MqttQualityOfServiceLevel.AtLeastOnce) await acknowledgements.Add(Task.CompletedTask, sentWith, message.Topic, MqttPubAckReasonCode.NotAuthorized, denial);
            return;
        }

        if (message.Retain)
            counters.Advise(publish.ClientId, publish.UserName, message.Topic, "sent with RETAIN, so it is never taken as fresh: switch RETAIN off in the device", Now);
        counters.Received(message.Dup, message.Retain);
        var accepted = Accept(new IncomingMessage(message.Topic, message.Payload.ToArray(), message.Retain, message.Dup, Now, access!.User ?? publish.ClientId)
        {
            PacketNumber = acknowledgements.Now?.PacketIdentifier,
        });
        // Nothing of a device is kept as a last value: the service's own figures under out are, and those it publishes again at each start.
        message.Retain = false;
        message.QualityOfServiceLevel = sentWith;
        if (sentWith < MqttQualityOfServiceLevel.ExactlyOnce) await acknowledgements.Add(accepted, sentWith, message.Topic);
        else await TakeExactlyOnce(accepted, message, publish);
    }

    // A method of its own, so that a throw before the first await becomes a failed task as well.
    async Task Accept(IncomingMessage message) => await intake.Accept(message, stopping);

    /// <summary>QoS 2 has a dialogue of four packets that the library keeps: it waits for the commit here, one message after another.</summary>
    async Task TakeExactlyOnce(Task accepted, MqttApplicationMessage message, InterceptingPublishEventArgs publish)
    {
        try
        {
            await accepted;
        }
        catch (Exception failure)
        {
            // Whatever went wrong, the message must not be acknowledged and the other devices must not notice.
            NotAccepted(failure, message.QualityOfServiceLevel, message.Topic, publish.ClientId);
            publish.ProcessPublish = false;
            publish.CloseConnection = true;
        }
    }

    /// <summary>A 3.1.1 device takes any acknowledgement as success; only a closed connection makes it send again.</summary>
    void NotAccepted(Exception failure, MqttQualityOfServiceLevel sentWith, string topic, string client)
    {
        counters.NotAccepted(isLost: sentWith == MqttQualityOfServiceLevel.AtMostOnce);
        if (failure is not OperationCanceledException) StoreRefused(topic, client, failure);
    }

    Task CheckSubscription(InterceptingSubscriptionEventArgs subscription)
    {
        if (ReferenceEquals(subscription.SessionItems[nameof(OwnMark)], OwnMark)) return Task.CompletedTask;
        var filter = subscription.TopicFilter.Topic;
        var reason = subscription.SessionItems[nameof(DeviceAccess)] is DeviceAccess access ? access.DenySubscription(filter) : "not signed in";
        if (reason is null) return Task.CompletedTask;
        counters.SubscriptionDenied(subscription.ClientId, subscription.UserName, filter, reason, Now);
        subscription.Response.ReasonCode = MqttSubscribeReasonCode.NotAuthorized;
        subscription.ReasonString = reason;
        subscription.ProcessSubscription = false;
        return Task.CompletedTask;
    }

    Task Count(int change)
    {
        Interlocked.Add(ref connected, change);
        if (change > 0) counters.ConnectionMade();
        Report();
        return Task.CompletedTask;
    }

    void Report()
    {
        if (server is { IsStarted: true })
            health.Report(HealthBoard.Broker, isWorking: true, $"listening on {options.Listen}, {Volatile.Read(ref connected)} connected", Now);
    }

    public async Task Publish(string topic, byte[] payload, bool retain, CancellationToken stop)
    {
        if (server is not { IsStarted: true } running) throw new BrokerLinkException("the broker is not listening");
        var message = new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(payload).WithRetainFlag(retain)
            .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build();
        await running.InjectApplicationMessage(new InjectedMqttApplicationMessage(message) { SenderClientId = "hotshop", CustomSessionItems = OwnSession }, stop);
    }

    public override async Task StopAsync(CancellationToken cancellationToken)
    {
        if (server is { IsStarted: true })
            await Publish(serviceTopic, MqttOutTopics.Offline, retain: true, cancellationToken);
        await base.StopAsync(cancellationToken);
        if (server is { IsStarted: true }) await server.StopAsync(new MqttServerStopOptions());
        health.Report(HealthBoard.Broker, isWorking: false, "stopped with the service", Now);
    }

    public override void Dispose()
    {
        server?.Dispose();
        base.Dispose();
    }

    Instant Now => time.GetCurrentInstant();

    [LoggerMessage(Level = LogLevel.Information, Message = "The broker listens on {Endpoint}, {Access}")]
    private partial void Listening(string endpoint, string access);

    [LoggerMessage(Level = LogLevel.Error, Message = "The broker {Detail}; trying again")]
    private partial void CannotListen(string detail);

    [LoggerMessage(Level = LogLevel.Error, Message = "A message on {Topic} from {Client} could not be stored; its connection is closed, so that it is sent again")]
    private partial void StoreRefused(string topic, string client, Exception failure);
}
