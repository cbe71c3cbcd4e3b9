using System.Net;
using System.Text.RegularExpressions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Web;
using Microsoft.AspNetCore.Builder;
using MQTTnet;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>The whole service, thirty times faster than the wall: MQTT messages in, a push server and a mail server at the other end.</summary>
public sealed partial class MessageToPhoneTests : IAsyncLifetime
{
    const double Speed = 30;
    readonly TemporaryFolder folder = new();
    readonly MailReceiver mail = new();
    readonly HttpClient phone = new(new SocketsHttpHandler { AllowAutoRedirect = false });
    readonly CancellationTokenSource stopDevice = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
    HttpReceiver push = null!;
    WebApplication service = null!;
    StudioPlan plan = null!;
    Task device = Task.CompletedTask;
    volatile Dictionary<string, string> values = new()
    {
        ["furnace-1/crown"] = "1150", ["furnace-1/flame"] = "1", ["furnace-1/call-for-heat"] = "1", ["annealer-1/chamber"] = "500", ["annealer-1/setpoint"] = "500",
    };

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        push = await HttpReceiver.Start();
        plan = Plan();
        var wall = new RealClock();
        var clock = new ScaledClock(wall, Speed, wall.GetUtcNow());
        service = MonitorHost.Build(plan, new RunChoices(IsDemo: true, Speed), wall, clock);
        await service.StartAsync(Stop);
        clock.Begin();
        device = Publish();
    }

    public async ValueTask DisposeAsync()
    {
        await stopDevice.CancelAsync();
        await device;
        phone.Dispose();
        await service.DisposeAsync();
        await push.DisposeAsync();
        await mail.DisposeAsync();
        stopDevice.Dispose();
        folder.Dispose();
    }

    [Theory]
    [InlineData("overheat", "furnace-1/crown", "1305", "1150")]
    [InlineData("flame-failure", "furnace-1/flame", "0", "1")]
    [InlineData("annealer-drift", "annealer-1/chamber", "540", "500")]
    public async Task A_message_from_a_sensor_rings_one_phone_then_again_then_the_next_and_a_tap_ends_it(string kind, string channel, string wrong, string right)
    {
        Set(channel, wrong);
        var first = await Next("ana", step: 1);
        Assert.Contains(kind, first.Occurrence, StringComparison.Ordinal);
        Assert.Equal(first.Occurrence, (await Next("ana", step: 2)).Occurrence);
        var next = await NextTo("ben");
        Assert.StartsWith("You are next to call", next.Title, StringComparison.Ordinal);

        // Fetching the link, as a mail scanner does, answers nothing; the button does.
        var page = await phone.GetStringAsync(first.Link, Stop);
        var button = WebUtility.HtmlDecode(TakeForm().Match(page).Groups["action"].Value);
        using var tapped = await phone.PostAsync(new Uri(first.Link, button), null, Stop);
        Assert.Equal(HttpStatusCode.Redirect, tapped.StatusCode);
        Assert.Contains("You have it", await phone.GetStringAsync(first.Link, Stop), StringComparison.Ordinal);

        Set(channel, right);
        Assert.StartsWith("Ended", (await Closing("ana")).Title, StringComparison.Ordinal);
        Assert.StartsWith("Ended", (await Closing("ben")).Title, StringComparison.Ordinal);
        await MailSaysTheSame();
        Assert.Equal(seen.Count, seen.Select(s => (s.Topic, s.Step)).Distinct().Count());
    }

    readonly List<Seen> seen = [];

    sealed record Seen(string Topic, int Step, string Kind, string Title, string Occurrence, Uri Link);

    async Task<Seen> Next(string topic, int step) => await Find(s => s.Topic == topic && s.Step == step);

    async Task<Seen> NextTo(string topic) => await Find(s => s.Topic == topic && s.Kind == "call");

    async Task<Seen> Closing(string topic) => await Find(s => s.Topic == topic && s.Kind == "closing");

    /// <summary>Reads on until the message is there; those passed over stay for the next question.</summary>
    async Task<Seen> Find(Func<Seen, bool> isIt)
    {
        while (true)
        {
            if (seen.FirstOrDefault(isIt) is { } found) return found;
            var body = (await Patience.For(push.Received.ReadAsync(Stop).AsTask())).Body!;
            seen.Add(new($"{body["topic"]}", (int)body["sequence"]!, $"{body["tags"]![0]}", $"{body["title"]}", $"{body["occurrence"]}", new Uri($"{body["click"]}")));
        }
    }

    /// <summary>Ana has a push and a mail: the two carry the same rounds, each once.</summary>
    async Task MailSaysTheSame()
    {
        var pushed = seen.Where(s => s.Topic == "ana").Select(s => s.Title).Order().ToList();
        var mailed = new List<string>();
        while (mailed.Count < pushed.Count) mailed.Add((await Patience.For(mail.Received.ReadAsync(Stop).AsTask())).Subject!);
        Assert.Equal(pushed, mailed.Order());
    }

    void Set(string channel, string value) => values = new(values) { [channel] = value };

    /// <summary>
    /// A device that tells every value every six seconds of the studio's time. The channels expect it once a minute only:
    /// a busy test machine that stops for two seconds must not look like a silent sensor.
    /// </summary>
    async Task Publish()
    {
        using var client = new MqttClientFactory().CreateMqttClient();
        await client.ConnectAsync(new MqttClientOptionsBuilder().WithTcpServer("127.0.0.1", int.Parse(plan.Configuration.Broker.Listen.Split(':')[1], System.Globalization.CultureInfo.InvariantCulture)).Build(), Stop);
        using var tick = new PeriodicTimer(TimeSpan.FromSeconds(6 / Speed), new RealClock());
        try
        {
            do
                foreach (var (channel, value) in values) await client.PublishStringAsync($"hotshop/quillmere/{channel}", value, MQTTnet.Protocol.MqttQualityOfServiceLevel.AtMostOnce, cancellationToken: stopDevice.Token);
            while (await tick.WaitForNextTickAsync(stopDevice.Token));
        }
        catch (OperationCanceledException) { }
    }

    StudioPlan Plan()
    {
        var configuration = ConfigurationFile.Parse($$"""
            {
              "site": "quillmere", "name": "Quillmere Hot Shop",
              "http": { "listen": "127.0.0.1:{{SomePlan.FreePort()}}" },
              "broker": { "listen": "127.0.0.1:{{SomePlan.FreePort()}}" },
              "appliances": [
                { "id": "furnace-1", "name": "Furnace 1", "kind": "furnace", "mode": "holding", "channels": [
                  { "id": "crown", "quantity": "temperature", "intervalSeconds": 60 }, { "id": "flame", "quantity": "flame", "intervalSeconds": 60 }, { "id": "call-for-heat", "quantity": "call-for-heat", "intervalSeconds": 60 } ] },
                { "id": "annealer-1", "name": "Annealer 1", "kind": "annealer", "mode": "working", "alarms": { "annealer-drift": { "onDelaySeconds": 60, "offDelaySeconds": 30 } },
                  "channels": [ { "id": "chamber", "quantity": "temperature", "intervalSeconds": 60 }, { "id": "setpoint", "quantity": "setpoint", "intervalSeconds": 60 } ] }
              ],
              "people": [
                { "id": "ana", "name": "Ana", "outlets": [ { "kind": "push", "url": "{{push.Address}}", "topic": "ana" }, { "kind": "mail", "address": "ana@quillmere.example" } ] },
                { "id": "ben", "name": "Ben", "outlets": [ { "kind": "push", "url": "{{push.Address}}", "topic": "ben" } ] }
              ],
              "notifications": { "order": ["ana", "ben"], "repeatMinutes": 1, "nextToCallMinutes": 2,
                "mail": { "host": "127.0.0.1", "port": {{mail.Port}}, "security": "none", "from": "night@quillmere.example" } }
            }
            """, "test");
        Assert.Empty(ConfigurationCheck.Problems(configuration, "test"));
        return PlanBuilder.Build(configuration, folder.Path);
    }

    [GeneratedRegex("<form method=\"post\" action=\"(?<action>[^\"]*handler=Take[^\"]*)\"")]
    private static partial Regex TakeForm();
}
