using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Wire;
using MQTTnet;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Broker;

/// <summary>
/// The service as a client of another broker: one connection after another, for ever, with a delay between them (<see cref="ReconnectDelay"/>).
/// Its health says working only while a message of its own has come back within the last minute.
/// </summary>
sealed partial class OutsideBroker(
    StudioPlan plan, IIntake intake, HealthBoard health, BrokerCounters counters, TimeProvider time, ILogger<OutsideBroker> log) : BackgroundService, IBrokerLink
{
    static readonly TimeSpan ProbeEvery = TimeSpan.FromSeconds(30), ProbeWithin = TimeSpan.FromSeconds(10);

    readonly BrokerMemory memory = new(plan.DataDirectory);
    OutsideOptions? options;
    volatile OutsideConnection? current;
    bool isVersion5 = true;

    public bool IsConnected => current is { IsConnected: true };

    public event Action? Connected;

    public override Task StartAsync(CancellationToken cancellationToken)
    {
        options = OutsideOptions.Read(plan);
        health.Report(HealthBoard.Broker, isWorking: false, $"connecting to {options.Address}", Now);
        return base.StartAsync(cancellationToken);
    }

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        var clientId = memory.ClientId();
        var delay = new ReconnectDelay(Random.Shared.NextDouble);
        var silentCloses = 0;
        while (!stoppingToken.IsCancellationRequested)
        {
            using var connection = new OutsideConnection(plan, intake, counters, time, clientId, stoppingToken);
            var (reason, lasted) = await OneConnection(connection, clientId, stoppingToken);
            current = null;
            if (stoppingToken.IsCancellationRequested) break;
            health.Report(HealthBoard.Broker, isWorking: false, $"no connection to {options!.Address}: {reason}", Now);
            NoConnection(options.Address, reason);
            var wait = delay.AfterConnection(lasted);
            silentCloses = connection.IsClosedSilently ? silentCloses + 1 : 0;
            // Two clients with one id throw each other out for ever; the slower one leaves the other in peace at least.
            if (connection.IsTakenOver || silentCloses >= 3) wait = Duration.Max(wait, ReconnectDelay.Longest);
            await Task.Delay(wait.ToTimeSpan(), time, stoppingToken);
        }
    }

    async Task<(string Reason, Duration Lasted)> OneConnection(OutsideConnection connection, string clientId, CancellationToken stop)
    {
        long? connectedSince = null;
        try
        {
            var result = await connection.Connect(options!.Build(clientId, isVersion5));
            if (result.ResultCode == MqttClientConnectResultCode.UnsupportedProtocolVersion && isVersion5)
            {
                isVersion5 = false;
                return ("it does not speak MQTT 5; trying 3.1.1", Duration.Zero);
            }
            if (result.ResultCode != MqttClientConnectResultCode.Success)
                return (LinkTrouble.Of(result.ResultCode, plan.Configuration.Broker.User), Duration.Zero);

            connectedSince = time.GetTimestamp();
            counters.ConnectionMade();
            // Ends with the connection; nobody waits for it, because a store that hangs must not hide that the connection is gone.
            _ = connection.Acknowledge();
            await Live(connection, result.IsSessionPresent, stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            await SayGoodbye(connection);
        }
        catch (BrokerLinkException refused)
        {
            connection.End(refused.Message);
        }
        catch (Exception failure)
        {
            // The library throws what it trips over when a connection breaks; whatever it is, the answer is the next connection.
            connection.End(LinkTrouble.Of(failure));
        }
        var reason = connection.Ended.IsCompleted ? await connection.Ended : "stopping";
        return (reason, connectedSince is { } since ? Duration.FromTimeSpan(time.GetElapsedTime(since)) : Duration.Zero);
    }

    async Task Live(OutsideConnection connection, bool isSessionPresent, CancellationToken stop)
    {
        var filters = plan.Channels.Subscriptions().ToList();
        if (await connection.Subscribe(filters, memory.NoLongerWanted(filters), isVersion5) is { } refusal)
        {
            connection.End(refusal);
            return;
        }
        memory.Subscribed(filters);
        await connection.Publish(MqttOutTopics.Service(plan), MqttOutTopics.Online, retain: true, stop);
        current = connection;
        NowConnected(options!.Address, isSessionPresent ? "session kept" : "new session");
        Connected?.Invoke();
        while (!connection.Ended.IsCompleted)
        {
            await RunProbe(connection, stop);
            await Task.WhenAny(connection.Ended, Task.Delay(ProbeEvery, time, stop));
            stop.ThrowIfCancellationRequested();
        }
    }

    async Task RunProbe(OutsideConnection connection, CancellationToken stop)
    {
        var (payload, returned) = connection.Probe.Next();
        await connection.Publish(connection.Probe.Topic, payload, retain: false, stop);
        long before;
        do
        {
            before = connection.Probe.ProgressSoFar;
            await Task.WhenAny(returned, connection.Ended, Task.Delay(ProbeWithin, time, stop));
            stop.ThrowIfCancellationRequested();
        }
        while (!returned.IsCompleted && !connection.Ended.IsCompleted && connection.Probe.ProgressSoFar != before);
        if (returned.IsCompleted) health.Report(HealthBoard.Broker, isWorking: true, $"connected to {options!.Address}, receiving", Now);
        else connection.End("it is connected, but what the service publishes does not come back, so readings may not come either: the user needs the right to read the site's topics, or the subscription was lost");
    }

    public async Task Publish(string topic, byte[] payload, bool retain, CancellationToken stop)
    {
        if (current is not { IsConnected: true } connection) throw new BrokerLinkException($"there is no connection to {plan.Configuration.Broker.Host}");
        await connection.Publish(topic, payload, retain, stop);
    }

    async Task SayGoodbye(OutsideConnection connection)
    {
        connection.End("stopping");
        if (!connection.IsConnected) return;
        using var brief = new CancellationTokenSource(TimeSpan.FromSeconds(2), time);
        try
        {
            await connection.Publish(MqttOutTopics.Service(plan), MqttOutTopics.Offline, retain: true, brief.Token);
            await connection.Disconnect();
        }
        catch (Exception gone) when (gone is BrokerLinkException or OperationCanceledException)
        {
            NoGoodbye(gone);
        }
    }

    Instant Now => time.GetCurrentInstant();

    [LoggerMessage(Level = LogLevel.Information, Message = "Connected to the broker at {Address}, {Session}")]
    private partial void NowConnected(string address, string session);

    [LoggerMessage(Level = LogLevel.Warning, Message = "No connection to the broker at {Address}: {Reason}")]
    private partial void NoConnection(string address, string reason);

    [LoggerMessage(Level = LogLevel.Debug, Message = "The broker did not take the offline notice; its last will says it")]
    private partial void NoGoodbye(Exception gone);
}
