using HotShop.Simulator.Chance;
using HotShop.Simulator.Faults;
using HotShop.Simulator.People;
using HotShop.Simulator.Plant;
using HotShop.Simulator.Truth;
using HotShop.Simulator.Wire;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Simulator;

/// <summary>
/// Quillmere Hot Shop: plant, people and devices, advanced to a time. No clock, no network: the caller says how far.
/// The same options give the same messages, however the time is cut into calls. Not for use from two threads at once.
/// </summary>
public sealed class SimulatedStudio
{
    readonly SimulationOptions options;
    readonly FaultSchedule faults;
    readonly Crew crew;
    readonly Logbook logbook;
    readonly IReadOnlyList<Device> devices;
    long nextOffsetCheckSeconds;
    Offset zoneOffset;

    /// <exception cref="ArgumentException">A fault that cannot be carried out, or a sampling interval outside 2 to 3600 s.</exception>
    public SimulatedStudio(SimulationOptions options)
    {
        if (options.SampleSeconds is < StudioPlant.StepSeconds or > 3600)
            throw new ArgumentOutOfRangeException(nameof(options), options.SampleSeconds, "SampleSeconds must lie between 2 and 3600");

        // Whole seconds keep the times in the payloads short.
        this.options = options = options with { Start = Instant.FromUnixTimeSeconds(options.Start.ToUnixTimeSeconds()) };
        faults = new FaultSchedule(options.Faults);
        Plant = new StudioPlant(HiddenParameters.Drawn(options.Seed), faults);
        Truth = new HiddenTruth(Plant, options.Start);
        logbook = new Logbook(options.Seed, options.Zone);
        devices = new Instruments(Plant, options.Seed).Devices(options.SampleSeconds);
        crew = new Crew(Plant, logbook, Truth, options);
        crew.BeginAt(options.Start);
        if (options.WithHoldingTwin) Truth.AddHoldingTwin(crew.HeldCelsius);
        Truth.Keep();
    }

    public HiddenTruth Truth { get; }

    /// <summary>How far the studio has been advanced.</summary>
    public Instant Now => options.Start + Duration.FromSeconds(Plant.ElapsedSeconds);

    internal StudioPlant Plant { get; }

    /// <summary>The mode that the crew has set, such as `working`.</summary>
    public string ModeOf(string appliance) => crew.ModeOf(appliance);

    /// <summary>Lets time pass.</summary>
    /// <param name="to">Whole steps of 2 s up to here are done; earlier than <see cref="Now"/> does nothing.</param>
    /// <returns>What the devices sent meanwhile, in time order.</returns>
    public IReadOnlyList<DeviceMessage> Advance(Instant to)
    {
        var sent = new List<DeviceMessage>();
        while (Now + Duration.FromSeconds(StudioPlant.StepSeconds) <= to) Step(sent);
        return sent;
    }

    void Step(List<DeviceMessage> sent)
    {
        Plant.Step(HourOfDay());
        var now = Now;
        crew.Step(now);
        Truth.Keep();
        var time = InstantPattern.ExtendedIso.Format(now);
        foreach (var device in devices)
        {
            var appliance = device.Name[4..];
            device.Step(now, time, Plant.ElapsedSeconds, faults.Has(FaultKind.SilentDevice, appliance, Plant.ElapsedSeconds),
                faults.Has(FaultKind.HeldBackDevice, appliance, Plant.ElapsedSeconds), sent);
        }

        foreach (var (topic, payload) in logbook.Due(now))
            if (!faults.Has(FaultKind.SilentDevice, Quillmere.Bench, Plant.ElapsedSeconds))
                sent.Add(new(now, Logbook.Device, topic, payload, Retain: false));
    }

    double HourOfDay()
    {
        if (Plant.ElapsedSeconds >= nextOffsetCheckSeconds)
        {
            zoneOffset = options.Zone.GetUtcOffset(Now);
            nextOffsetCheckSeconds += 900;
        }

        return (Now.ToUnixTimeSeconds() + zoneOffset.Seconds) % 86_400 / 3600.0;
    }
}
