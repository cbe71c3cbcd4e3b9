using System.Globalization;
using System.Net;
using System.Net.Sockets;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Loop;
using HotShop.Monitor.Store;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Tests.Notifications;
using HotShop.Monitor.Web;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>A message that reached a phone.</summary>
/// <param name="Way">push or mail.</param>
/// <param name="Round">The number after #: which round of calling.</param>
sealed record Rung(string Phone, string Way, int Round, string Kind, string Title, string Text, string? Link, string? Occurrence);

/// <summary>
/// The whole service as <c>hotshop run</c> puts it together, with its own broker and store, real sensors' messages in and real receivers out.
/// Only its clock is moved by hand: a minute at a time, and every sensor speaks each minute.
/// </summary>
sealed class NightStudio : IAsyncDisposable
{
    static readonly Duration Minute = Duration.FromMinutes(1);
    readonly WebApplication app;
    readonly HttpReceiver push;
    readonly MailReceiver mail;
    readonly StudioLoop loop;

    readonly TcpListener? inTheWay;

    NightStudio(WebApplication app, StudioConfiguration configuration, FakeTimeProvider clock, HttpReceiver push, MailReceiver mail, TcpListener? inTheWay)
    {
        (this.app, Configuration, Clock, this.push, this.mail, this.inTheWay) = (app, configuration, clock, push, mail, inTheWay);
        loop = app.Services.GetServices<IHostedService>().OfType<StudioLoop>().Single();
    }

    public StudioConfiguration Configuration { get; }
    public FakeTimeProvider Clock { get; }
    public Sensors Sensors { get; private set; } = null!;
    public HttpClient Browser { get; } = new(new SocketsHttpHandler { AllowAutoRedirect = false });
    public IAlarmDesk Alarms => app.Services.GetRequiredService<IAlarmDesk>();
    public HealthBoard Health => app.Services.GetRequiredService<HealthBoard>();
    public IServiceProvider Services => app.Services;

    /// <summary>Plays a story from a calm start. Fails where the service has logged an error that the story does not expect.</summary>
    /// <param name="isBrokerUp">False: another program holds the broker's port, and no sensor can connect.</param>
    /// <param name="expectedErrors">Words of errors that belong to the story.</param>
    public static async Task Play(Func<NightStudio, Task> story, Func<StudioConfiguration, StudioConfiguration>? change = null, TimeProvider? wall = null,
        bool isBrokerUp = true, params string[] expectedErrors)
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-night-").FullName;
        try
        {
            await using (var studio = await Start(folder, change ?? (c => c), wall ?? new RealClock(), isBrokerUp)) await story(studio);
            Assert.DoesNotContain(ServiceLog.Errors(folder), line => !expectedErrors.Any(e => line.Contains(e, StringComparison.Ordinal)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    static async Task<NightStudio> Start(string folder, Func<StudioConfiguration, StudioConfiguration> change, TimeProvider wall, bool isBrokerUp)
    {
        var push = await HttpReceiver.Start();
        var mail = new MailReceiver();
        var configuration = change(NightPlan.Configuration(folder, push.Address, mail.Port));
        // A Sunday night; far from any clock change.
        var clock = new FakeTimeProvider(new DateTimeOffset(2026, 3, 1, 1, 0, 0, TimeSpan.Zero));
        var inTheWay = isBrokerUp ? null : new TcpListener(IPEndPoint.Parse(configuration.Broker.Listen));
        inTheWay?.Start();
        var app = MonitorHost.Build(NightPlan.Plan(configuration), new RunChoices(IsDemo: false, Speed: 1), wall, clock);
        await app.StartAsync(TestContext.Current.CancellationToken);
        var studio = new NightStudio(app, configuration, clock, push, mail, inTheWay);
        if (isBrokerUp) await studio.ConnectSensors();
        return studio;
    }

    public void FreeBrokerPort() => inTheWay!.Stop();

    async Task ConnectSensors()
    {
        await Patience.Until(() => Health.IsWorking(HealthBoard.Broker), () => $"the broker listens; it says '{Health.Of(HealthBoard.Broker)?.Detail}'");
        Sensors = await Sensors.Connect(Configuration);
        await Sensors.Measure(Clock.GetUtcNow().ToInstant());
    }

    /// <summary>Time passes: each minute the loop turns and every sensor speaks.</summary>
    public async Task Pass(int minutes)
    {
        for (var i = 0; i < minutes; i++)
        {
            Clock.Advance(Minute.ToTimeSpan());
            await loop.Tick(TestContext.Current.CancellationToken);
            await Sensors.Measure(Clock.GetUtcNow().ToInstant());
        }
    }

    /// <summary>Time passes, and each minute the test says what the sensors measure.</summary>
    public async Task Pass(int minutes, Action<int> measure)
    {
        for (var i = 0; i < minutes; i++)
        {
            measure(i);
            await Pass(1);
        }
    }

    /// <summary>What has reached the phones since the last question. Nothing is on its way any more when it answers.</summary>
    public async Task<IReadOnlyList<Rung>> Heard()
    {
        await Patience.Until(() => Waiting() == 0, () => $"the outbox empties; {Waiting()} messages wait");
        List<Rung> heard = [];
        foreach (var body in push.Drain().Select(r => r.Body!))
            heard.Add(new((string)body["topic"]!, "push", (int)body["sequence"]!, (string)body["tags"]![0]!, (string)body["title"]!, (string)body["message"]!, (string)body["click"]!, (string)body["occurrence"]!));
        while (mail.Received.TryRead(out var letter))
        {
            var (subject, text) = (letter.Subject!, letter.TextBody!);
            var round = int.Parse(text.Split(' ')[0][1..], CultureInfo.InvariantCulture);
            heard.Add(new(letter.To.Mailboxes.Single().LocalPart, "mail", round, KindOf(subject), subject, text, null, null));
        }
        return [.. heard.OrderBy(h => h.Round).ThenBy(h => h.Phone, StringComparer.Ordinal).ThenBy(h => h.Way, StringComparer.Ordinal)];
    }

    /// <summary>The same in short: "night-phone-1 mail call #1".</summary>
    public async Task<IReadOnlyList<string>> HeardInShort() => [.. (await Heard()).Select(h => $"{h.Phone} {h.Way} {h.Kind} #{h.Round}")];

    public async ValueTask DisposeAsync()
    {
        Browser.Dispose();
        if (Sensors is not null) await Sensors.DisposeAsync();
        await app.StopAsync(CancellationToken.None);
        await app.DisposeAsync();
        inTheWay?.Dispose();
        await push.DisposeAsync();
        await mail.DisposeAsync();
    }

    static string KindOf(string subject) => subject switch
    {
        _ when subject.Contains("Ended:", StringComparison.Ordinal) => "closing",
        _ when subject.Contains("Somebody has it:", StringComparison.Ordinal) => "held",
        _ => "call",
    };

    long Waiting()
    {
        using var connection = app.Services.GetRequiredService<IStoreReader>().Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT count(*) FROM outbox WHERE state = 'pending'";
        return (long)command.ExecuteScalar()!;
    }
}
