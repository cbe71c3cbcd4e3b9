using System.Reflection;
using System.Text;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Modes;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Simulator;
using HotShop.Simulator.Faults;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>The simulated studio's messages, read as the service reads them, straight into the alarms: days in seconds.</summary>
sealed class SimulatedNight
{
    /// <summary>Seven in the morning of a working Tuesday, winter.</summary>
    public static readonly Instant Start = Instant.FromUtc(2026, 1, 13, 6, 0);

    readonly StudioPlan plan;
    readonly AlarmEngine engine;
    readonly MessageReader reader;
    readonly SimulatedStudio studio;
    readonly Dictionary<string, double> terminals = [];
    readonly List<AlarmTransition> happened = [];
    StudioMemory memory;

    public SimulatedNight(int seed, StudioPlan? plan = null, int sampleSeconds = 10, params IReadOnlyList<FaultOrder> faults)
    {
        this.plan = plan ?? Plan(sampleSeconds);
        engine = new AlarmEngine(this.plan);
        memory = engine.Begin(Start);
        foreach (var appliance in this.plan.Appliances) Do(new AlarmEvent.ModeSet(appliance.Id, new ModeInForce(ModeNames.Parse(appliance.Options.Mode)!.Value, Start, "configuration"), Start));
        reader = new MessageReader(this.plan.Channels);
        studio = new SimulatedStudio(new SimulationOptions { Seed = seed, Start = Start, SampleSeconds = sampleSeconds, Faults = faults });
    }

    public IReadOnlyList<AlarmTransition> Happened => happened;

    public long Samples { get; private set; }

    /// <summary>What would have called somebody.</summary>
    public IEnumerable<AlarmTransition> Calls => happened.Where(t => t.Change == AlarmChange.Raised && t.Occurrence.Priority < 3 && t.Occurrence.InhibitedBy is null);

    public string Story => string.Join('\n', happened.Select(t => $"{t.At} {t.Change} {t.Occurrence.AlarmId} p{t.Occurrence.Priority} {t.Occurrence.InhibitedBy}: {t.Occurrence.Words.Sentence}"));

    /// <summary>The demo's own configuration, with the sampling of the simulation.</summary>
    public static StudioPlan Plan(int sampleSeconds, Func<ApplianceOptions, ApplianceOptions>? change = null)
    {
        using var text = new StreamReader(typeof(StudioPlan).Assembly.GetManifestResourceStream("HotShop.Monitor.Demo.quillmere.jsonc")!);
        var configuration = ConfigurationFile.Parse(text.ReadToEnd(), "quillmere.jsonc");
        return PlanBuilder.Build(configuration with
        {
            Appliances = [.. configuration.Appliances.Select(a => a with { Channels = [.. a.Channels.Select(c => c with { IntervalSeconds = Math.Max(c.IntervalSeconds, sampleSeconds) })] }).Select(a => change is null ? a : change(a))],
        }, "/");
    }

    public SimulatedNight Run(Duration span)
    {
        for (var end = studio.Now + span; studio.Now < end;)
        {
            foreach (var message in studio.Advance(studio.Now + Duration.FromSeconds(30))) Take(message);
            Do(new AlarmEvent.Tick(studio.Now));
        }
        return this;
    }

    void Take(DeviceMessage message)
    {
        // A studio with fewer sensors: what they would send is nobody's.
        if (!message.Topic.EndsWith("/log", StringComparison.Ordinal) && plan.Channels.ForTopic(message.Topic).Count == 0) return;
        var content = reader.Read(new IncomingMessage(message.Topic, Encoding.UTF8.GetBytes(message.Payload), false, false, message.At, message.Device));
        Assert.Empty(content.Refusals);
        if (content.Entry is { Entry: "mode" } entry)
            Do(new AlarmEvent.ModeSet(entry.Appliance, new ModeInForce(ModeNames.Parse(entry.Fields["mode"]!.GetValue<string>())!.Value, entry.At ?? message.At, "crew"), message.At));
        foreach (var reading in content.Readings) Take(reading, message.At);
    }

    void Take(WireReading reading, Instant arrived)
    {
        var at = reading.At ?? arrived;
        if (arrived - at > reading.Channel.LiveLag) return;
        double? value = reading.Value;
        if (reading.Unit == Quantities.Millivolt) value = Temperatures.Of(reading.Channel, reading.Value, terminals.TryGetValue(reading.Channel.ColdJunction!, out var t) ? t : null).Item1;
        else if (reading.Channel.Quantity == Quantity.Temperature) terminals[reading.Channel.Id] = reading.Value;
        Samples++;
        var isPlausible = value >= reading.Channel.PlausibleLow && value <= reading.Channel.PlausibleHigh;
        Do(new AlarmEvent.Sample(reading.Channel.Id, at, value ?? double.NaN, isPlausible, arrived));
    }

    void Do(AlarmEvent step)
    {
        var (next, transitions) = engine.Step(memory, step);
        memory = next;
        happened.AddRange(transitions);
    }
}
