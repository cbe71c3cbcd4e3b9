using HotShop.Simulator.Broker;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HotShop.Simulator.Tests.Broker;

public class SimulatorRunTests
{
    static readonly TimeSpan Generous = TimeSpan.FromSeconds(60);

    // Pauses and time-outs are real here: the network is.
#pragma warning disable RS0030
    static readonly TimeProvider Wall = TimeProvider.System;
#pragma warning restore RS0030

    [Fact]
    public async Task Every_message_reaches_the_broker_in_the_devices_order()
    {
        await using var broker = new TestBroker();
        await broker.StartAsync();
        var run = RunTo(broker, hours: 0.5);
        await run.RunAsync(Run.At(0.5), TestContext.Current.CancellationToken).WaitAsync(Generous, TestContext.Current.CancellationToken);

        Assert.Equal(Expected(0.5).Order(), ByDevice(broker).Order());
        foreach (var device in Expected(0.5).GroupBy(m => m.Device))
            Assert.Equal(device, ByDevice(broker).Where(m => m.Device == device.Key));
        Assert.Equal((0, 0), (run.Waiting, run.Refused));
        Assert.Equal(Expected(0.5).Count, run.Acknowledged);
    }

    [Fact]
    public async Task A_broker_that_drops_the_connection_again_and_again_misses_nothing()
    {
        await using var broker = new TestBroker();
        var drops = 0;
        broker.Takes = count => count == 0 || count % 100 != 0 || ++drops % 2 == 0;
        await broker.StartAsync();
        await RunTo(broker, hours: 0.5)
            .RunAsync(Run.At(0.5), TestContext.Current.CancellationToken).WaitAsync(Generous, TestContext.Current.CancellationToken);

        Assert.True(drops > 5);
        Assert.Equal(Expected(0.5).Order(), ByDevice(broker).Distinct().Order());
    }

    [Fact]
    public async Task A_broker_that_starts_late_and_restarts_gets_everything()
    {
        await using var broker = new TestBroker();
        var halfWay = new TaskCompletionSource();
        broker.Takes = count =>
        {
            if (count > 300) halfWay.TrySetResult();
            return true;
        };
        var running = RunTo(broker, hours: 0.5).RunAsync(Run.At(0.5), TestContext.Current.CancellationToken);
        await broker.StartAsync();
        await halfWay.Task.WaitAsync(Generous, TestContext.Current.CancellationToken);
        await broker.StopAsync();
        await broker.StartAsync();
        await running.WaitAsync(Generous, TestContext.Current.CancellationToken);
        Assert.Equal(Expected(0.5).Order(), ByDevice(broker).Distinct().Order());
    }

    [Fact]
    public async Task Devices_log_in_with_the_password_they_were_given()
    {
        await using var broker = new TestBroker { Admits = (user, password) => (user, password) == ("studio", "glass") };
        await broker.StartAsync();
        var address = new BrokerAddress("127.0.0.1", broker.Port, "studio", "glass");
        await RunTo(broker, 0.02, address)
            .RunAsync(Run.At(0.02), TestContext.Current.CancellationToken).WaitAsync(Generous, TestContext.Current.CancellationToken);
        Assert.NotEmpty(broker.Received);
    }

    [Fact]
    public async Task A_device_with_a_login_of_its_own_uses_it()
    {
        var passwords = Quillmere.Appliances.Append(Quillmere.Bench).ToDictionary(Quillmere.DeviceOf, appliance => $"secret of {appliance}");
        await using var broker = new TestBroker { Admits = (user, password) => user is not null && passwords.GetValueOrDefault(user) == password };
        await broker.StartAsync();
        var run = RunTo(broker, 0.02, new BrokerAddress("127.0.0.1", broker.Port) { PasswordsByDevice = passwords });
        await run.RunAsync(Run.At(0.02), TestContext.Current.CancellationToken).WaitAsync(Generous, TestContext.Current.CancellationToken);
        Assert.Equal(passwords.Keys.Order(), broker.Received.Select(m => m.Device).Distinct().Order());
    }

    [Fact]
    public async Task A_wrong_password_keeps_the_messages_waiting_until_it_is_stopped()
    {
        await using var broker = new TestBroker { Admits = (user, password) => (user, password) == ("studio", "glass") };
        await broker.StartAsync();
        var run = RunTo(broker, 0.02, new BrokerAddress("127.0.0.1", broker.Port, "studio", "wrong"));
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(1));
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => run.RunAsync(Run.At(0.02), stop.Token));
        Assert.Equal(Expected(0.02).Count, run.Waiting);
        Assert.Empty(broker.Received);
    }

    [Fact]
    public void The_scaled_clock_runs_a_minute_a_second_and_leaves_timers_alone()
    {
        var wall = new FakeTimeProvider();
        var clock = new ScaledClock(wall, Run.Tuesday, speed: 60);
        wall.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(Run.At(10 / 60.0), Instant.FromDateTimeOffset(clock.GetUtcNow()));
        Assert.Equal(TimeSpan.FromSeconds(10), clock.GetElapsedTime(clock.GetTimestamp() - 10 * clock.TimestampFrequency));
    }

    [Theory, InlineData("localhost:1883", "localhost", 1883), InlineData("[::1]:8883", "::1", 8883)]
    public void An_address_is_a_host_and_a_port(string text, string host, int port) =>
        Assert.Equal((host, port), BrokerAddress.Parse(text) is var (address, _) ? (address!.Host, address.Port) : default);

    [Theory, InlineData("localhost"), InlineData(":1883"), InlineData("localhost:0"), InlineData("localhost:70000")]
    public void An_address_without_a_port_is_refused_with_an_example(string text) =>
        Assert.Contains("such as 127.0.0.1:1883", BrokerAddress.Parse(text).Problem, StringComparison.Ordinal);

    static SimulatorRun RunTo(TestBroker broker, double hours, BrokerAddress? address = null)
    {
        var clock = new FakeTimeProvider(Run.At(hours).ToDateTimeOffset());
        return new SimulatorRun(Run.Studio(6), address ?? new BrokerAddress("127.0.0.1", broker.Port), clock, Wall, NullLogger.Instance);
    }

    static IReadOnlyList<(string Device, string Topic, string Payload)> ByDevice(TestBroker broker) => broker.Received;

    static List<(string Device, string Topic, string Payload)> Expected(double hours) =>
        [.. Run.Studio(6).Advance(Run.At(hours)).Select(m => (m.Device, m.Topic, m.Payload))];
}
