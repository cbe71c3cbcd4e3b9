using System.Buffers;
using System.Threading.Channels;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using MQTTnet;
using MQTTnet.Protocol;
using NodaTime.Extensions;

namespace HotShop.Monitor.Broker;

/// <summary>
/// One connection to the outside broker, from connecting to its end. Messages go to the intake at once, many at a time, and are acknowledged in the order they came
/// (MQTT 5.0, 4.6), each after its commit. A new connection is a new object with a client of its own, so an acknowledgement can never reach a later connection.
/// </summary>
sealed class OutsideConnection : IDisposable
{
    static readonly TimeSpan AnswerWithin = TimeSpan.FromSeconds(10);

    readonly IMqttClient client = new MqttClientFactory().CreateMqttClient();
    readonly Channel<(MqttApplicationMessageReceivedEventArgs Received, Task Accepted)> order =
        Channel.CreateBounded<(MqttApplicationMessageReceivedEventArgs, Task)>(new BoundedChannelOptions(2 * OutsideOptions.MostInFlight) { SingleReader = true });
    readonly TaskCompletionSource<string> ended = new(TaskCreationOptions.RunContinuationsAsynchronously);
    readonly StudioPlan plan;
    readonly IIntake intake;
    readonly BrokerCounters counters;
    readonly TimeProvider time;
    readonly CancellationToken stopping;
    readonly string outRoot;

    public OutsideConnection(StudioPlan plan, IIntake intake, BrokerCounters counters, TimeProvider time, string clientId, CancellationToken stopping)
    {
        (this.plan, this.intake, this.counters, this.time, this.stopping) = (plan, intake, counters, time, stopping);
        outRoot = MqttOutTopics.Root(plan);
        Probe = new LoopbackProbe($"{outRoot}probe/{clientId}");
        client.ApplicationMessageReceivedAsync += Receive;
        client.DisconnectedAsync += lost =>
        {
            if (!lost.ClientWasConnected) return Task.CompletedTask;
            IsTakenOver = lost.Reason == MqttClientDisconnectReason.SessionTakenOver;
            IsClosedSilently = lost.Reason == MqttClientDisconnectReason.NormalDisconnection && lost.Exception is null;
            ended.TrySetResult(LinkTrouble.Of(lost, clientId));
            return Task.CompletedTask;
        };
    }

    public LoopbackProbe Probe { get; }

    public bool IsConnected => client.IsConnected;

    /// <summary>It ended because another client came with the same id: coming back at once would only throw that one out.</summary>
    public bool IsTakenOver { get; private set; }

    /// <summary>The broker closed it and gave no reason. Some do that when another client takes the session over.</summary>
    public bool IsClosedSilently { get; private set; }

    /// <summary>Why the connection ended, once it has.</summary>
    public Task<string> Ended => ended.Task;

    public void End(string reason) => ended.TrySetResult(reason);

    public Task<MqttClientConnectResult> Connect(MqttClientOptions options) => client.ConnectAsync(options, stopping);

    /// <summary>The library waits for an answer as long as it is allowed to; on a dead line that would be for ever.</summary>
    CancellationTokenSource Deadline() => new(AnswerWithin, time);

    /// <summary>Subscribes to all of the configuration's topics, and away from those it no longer has.</summary>
    /// <returns>Null, or the sentence that says which subscription was refused.</returns>
    public async Task<string?> Subscribe(IReadOnlyList<string> filters, IReadOnlyList<string> noLongerWanted, bool isVersion5)
    {
        using var deadline = Deadline();
        using var both = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, stopping);
        if (noLongerWanted.Count > 0)
        {
            var away = new MqttClientUnsubscribeOptionsBuilder();
            foreach (var filter in noLongerWanted) away.WithTopicFilter(filter);
            await client.UnsubscribeAsync(away.Build(), both.Token);
        }
        var wanted = new MqttClientSubscribeOptionsBuilder();
        foreach (var filter in filters)
            wanted.WithTopicFilter(f =>
            {
                f.WithTopic(filter).WithAtLeastOnceQoS();
                // Last values once, when the session is new: at every reconnection they would only be refused again.
                if (isVersion5) f.WithRetainHandling(MqttRetainHandling.SendAtSubscribeIfNewSubscriptionOnly);
            });
        var granted = await client.SubscribeAsync(wanted.Build(), both.Token);
        var refused = granted.Items.FirstOrDefault(i => i.ResultCode > MqttClientSubscribeResultCode.GrantedQoS2);
        return refused is null
            ? null
            : $"it refuses the subscription to '{refused.TopicFilter.Topic}' ({refused.ResultCode}): ask whoever runs the broker for the right to read it";
    }

    async Task Receive(MqttApplicationMessageReceivedEventArgs received)
    {
        received.AutoAcknowledge = false;
        var message = received.ApplicationMessage;
        Task accepted;
        if (message.Topic.StartsWith(outRoot, StringComparison.Ordinal))
        {
            // Our own words come back with the site's subscription; the probe among them is the proof that it is alive.
            Probe.Seen(message.Topic, message.Payload.ToArray());
            accepted = Task.CompletedTask;
        }
        else
        {
            Probe.Progress();
            counters.Received(message.Dup, message.Retain);
            accepted = Accept(new IncomingMessage(message.Topic, message.Payload.ToArray(), message.Retain, message.Dup, time.GetCurrentInstant(), Sender: null)
            {
                PacketNumber = received.PacketIdentifier,
            });
        }
        await order.Writer.WriteAsync((received, accepted), stopping);
    }

    // A method of its own, so that a throw before the first await becomes a failed task as well.
    async Task Accept(IncomingMessage message) => await intake.Accept(message, stopping);

    /// <summary>Acknowledges until the connection ends.</summary>
    public async Task Acknowledge()
    {
        try
        {
            await AcknowledgeInOrder();
        }
        catch (OperationCanceledException) when (stopping.IsCancellationRequested)
        {
            // What is not acknowledged comes again at the next start.
        }
    }

    async Task AcknowledgeInOrder()
    {
        await foreach (var (received, accepted) in order.Reader.ReadAllAsync(stopping))
        {
            try
            {
                await accepted;
                Probe.Progress();
            }
            catch (Exception failure)
            {
                var isLost = received.ApplicationMessage.QualityOfServiceLevel == MqttQualityOfServiceLevel.AtMostOnce;
                counters.NotAccepted(isLost);
                // Whatever comes behind it in the order stays unacknowledged too: the broker sends it all again after the next connection.
                if (!isLost)
                {
                    End($"the store could not take a message ({failure.Message.TrimEnd('.')}), so it was left with the broker");
                    return;
                }
                continue;
            }
            if (ended.Task.IsCompleted) continue;
            try
            {
                await received.AcknowledgeAsync(stopping);
            }
            catch (Exception failure)
            {
                // On a lost connection the library throws what it happens to trip over; the message comes again, and the store knows it.
                End($"an acknowledgement could not be sent ({failure.Message.TrimEnd('.')})");
            }
        }
    }

    /// <exception cref="BrokerLinkException">Not sent, or refused.</exception>
    public async Task Publish(string topic, byte[] payload, bool retain, CancellationToken stop)
    {
        MqttClientPublishResult result;
        using var deadline = Deadline();
        using var both = CancellationTokenSource.CreateLinkedTokenSource(deadline.Token, stop);
        try
        {
            result = await client.PublishAsync(new MqttApplicationMessageBuilder().WithTopic(topic).WithPayload(payload).WithRetainFlag(retain)
                .WithQualityOfServiceLevel(MqttQualityOfServiceLevel.AtLeastOnce).Build(), both.Token);
        }
        catch (Exception failure) when (!stop.IsCancellationRequested)
        {
            throw new BrokerLinkException($"'{topic}' was not sent: {LinkTrouble.Of(failure)}", inner: failure);
        }
        if (!result.IsSuccess) throw new BrokerLinkException($"it refuses what the service publishes on '{topic}' ({result.ReasonCode}): ask whoever runs the broker for the right to write {outRoot}#", isRefused: true);
    }

    public Task Disconnect() => client.TryDisconnectAsync();

    public void Dispose()
    {
        order.Writer.TryComplete();
        client.Dispose();
    }
}
