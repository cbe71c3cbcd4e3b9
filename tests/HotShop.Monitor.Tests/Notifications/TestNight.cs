using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Wire;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Tests.Notifications;

/// <summary>Two people asleep, a studio, and a clock that goes when told.</summary>
sealed class TestNight : IDisposable
{
    readonly string folder = Directory.CreateTempSubdirectory("hotshop-night-").FullName;

    public TestNight(params PersonOptions[] people)
    {
        Plan = PlanFor(people.Length > 0 ? people : [Person("ana"), Person("ben")], folder);
        Order = new(Plan.Configuration);
        Links = new(LinkKey.Load(folder), NightLinks.BaseAddress(Plan.Configuration.Http));
        Restart();
    }

    public FakeTimeProvider Time { get; } = new(new DateTimeOffset(2026, 3, 1, 2, 14, 0, TimeSpan.Zero));

    public StudioPlan Plan { get; }

    public CallOrder Order { get; }

    public NightLinks Links { get; }

    public RecordingOutlet Outlet { get; } = new();

    public OutboxBell Bell { get; private set; } = new();

    public NotificationStore Store { get; private set; } = null!;

    public FakeAlarms Alarms { get; private set; } = null!;

    public NotificationDesk Desk { get; private set; } = null!;

    public NightDesk Night { get; private set; } = null!;

    public HealthBoard Board { get; } = new();

    public IReadOnlyList<OutboxLane> Lanes { get; private set; } = [];

    public Instant Now => Time.GetUtcNow().ToInstant();

    /// <summary>Everything anew but the database and the alarms' own rows, as after a kill.</summary>
    public void Restart()
    {
        Store?.Dispose();
        Store = new(Path.Combine(folder, "night.db"), Time);
        Bell = new();
        var before = Alarms?.Current ?? [];
        Alarms = new(Store);
        Desk = new(Plan, Order, Bell, new(Time), NullLogger<NotificationDesk>.Instance);
        Alarms.Stage = new NoStage();
        foreach (var alarm in before) Alarms.Raise(alarm).GetAwaiter().GetResult();
        Alarms.Stage = Desk;
        Night = new(Alarms, Desk, Links, Order, Store, Store, Time);
        Lanes = [.. Order.Outlets.Select(o => new OutboxLane(o, Outlet, Desk, Links, Store, Store, Time, () => 1, NullLogger.Instance))];
    }

    /// <summary>Raises and returns the id.</summary>
    public async Task<string> Overheat(int priority = 1, string id = "furnace-1.overheat.crown-1")
    {
        await Alarms.Raise(FakeAlarms.Overheat(Now, priority, id));
        return id;
    }

    /// <summary>Lets time pass, a tick each second, sending what is due.</summary>
    public async Task Pass(double minutes)
    {
        for (var seconds = 0; seconds < minutes * 60; seconds++)
        {
            Time.Advance(TimeSpan.FromSeconds(1));
            await Store.Write(Desk.Tick);
        }
        await Send();
    }

    public async Task Send()
    {
        foreach (var lane in Lanes) await lane.Step(default);
    }

    /// <summary>Who was sent what, e.g. "ana call #1".</summary>
    public IReadOnlyList<string> Sent => [.. Outlet.Taken.Select(t => $"{t.Person} {t.Message.Kind.ToString().ToLowerInvariant()} #{t.Message.Step}")];

    public static PersonOptions Person(string id, params OutletOptions[] outlets) => new()
    {
        Id = id, Name = char.ToUpperInvariant(id[0]) + id[1..], Phone = "555 0100",
        Outlets = outlets.Length > 0 ? outlets : [new() { Kind = "push", Url = "http://127.0.0.1:9/", Topic = id }],
    };

    public static StudioPlan PlanFor(IReadOnlyList<PersonOptions> people, string folder, NotificationOptions? notifications = null) => new(
        new()
        {
            Site = "quillmere", Name = "Quillmere Hot Shop", Appliances = [], People = people,
            Notifications = (notifications ?? new()) with { Order = [.. people.Select(p => p.Id)] },
            Http = new() { PublicAddress = "https://quillmere.example" },
        },
        DateTimeZone.Utc, [], new ChannelDirectory("hotshop", "quillmere", [], []), folder)
    { BaseDirectory = folder };

    public void Dispose()
    {
        Store.Dispose();
        Directory.Delete(folder, recursive: true);
    }

    sealed class NoStage : ITransitionStage
    {
        public void React(IReadOnlyList<AlarmTransition> transitions, HotShop.Monitor.Store.WriteScope scope) { }
    }
}
