using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Live;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Extensions.Time.Testing;
using NodaTime;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>The desk with a real database; can be restarted at any time.</summary>
sealed class DeskStudio : IDisposable, ITransitionStage, IModes
{
    readonly Dictionary<string, ModeInForce> modes = [];
    readonly FakeTimeProvider clock = new(Story.Start.ToDateTimeOffset());
    LatestReadings latest;

    public DeskStudio(StudioPlan? plan = null)
    {
        Plan = plan ?? TestStudio.Plan;
        latest = new LatestReadings(Store);
        Desk = Start();
    }

    public StudioPlan Plan { get; private set; }
    public MemoryStore Store { get; } = new();
    public HealthBoard Health { get; } = new();
    public LiveFeed Live { get; } = new();
    public LoadBook Loads { get; private set; } = null!;
    public AlarmDesk Desk { get; private set; }

    /// <summary>What the stages were told in transactions that were committed.</summary>
    public List<AlarmTransition> Told { get; } = [];

    public Instant Now => Store.Now;

    /// <summary>What was committed is there again, everything else is forgotten; with another plan, the configuration was changed meanwhile.</summary>
    public void Restart(StudioPlan? plan = null)
    {
        Plan = plan ?? Plan;
        Desk = Start();
    }

    AlarmDesk Start()
    {
        Loads = new LoadBook(Store, Store);
        var engine = new AlarmEngine(Plan);
        return new AlarmDesk(engine, new AlarmMemoryLoad(engine, Store, latest), new Surroundings(Plan, this, Loads, Health), new AlarmHistory(Store, [this], Live), Store, clock);
    }

    public void Pass(double seconds)
    {
        Store.Now += Duration.FromSeconds(seconds);
        clock.SetUtcNow(Store.Now.ToDateTimeOffset());
    }

    public Task Send(string channel, double value, ReadingMarks marks = ReadingMarks.None, bool isLive = true, double ageSeconds = 0)
    {
        var plan = Plan.Channels.Find(channel)!;
        if (value < plan.PlausibleLow || value > plan.PlausibleHigh) marks |= ReadingMarks.Implausible;
        StoredReading[] readings = [new(plan, Quantities.CanonicalUnit(plan.Quantity), Now - Duration.FromSeconds(ageSeconds), value, marks, isLive, Now)];
        return Store.Write(scope =>
        {
            Desk.React(readings, scope);
            scope.OnCommit(() => latest.Adopt(readings));
            return true;
        });
    }

    public Task SendEvery(double seconds, int times, string channel, double value) => Repeat(times, async () =>
    {
        Pass(seconds);
        await Send(channel, value);
    });

    public Task Tick() => Store.Write(scope => { Desk.Tick(scope); return true; });

    public void SetMode(string appliance, Mode mode) => modes[appliance] = new ModeInForce(mode, Now, "somebody");

    ModeInForce IModes.Of(string appliance) => modes.GetValueOrDefault(appliance) ?? new ModeInForce(Mode.Holding, Instant.MinValue, "configuration");

    void ITransitionStage.React(IReadOnlyList<AlarmTransition> transitions, WriteScope scope) => scope.OnCommit(() => Told.AddRange(transitions));

    static async Task Repeat(int times, Func<Task> what)
    {
        for (var i = 0; i < times; i++) await what();
    }

    public void Dispose() => Store.Dispose();
}
