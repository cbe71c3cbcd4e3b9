using HotShop.Physics.Thermometry;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>A channel as the configuration in force describes it.</summary>
public sealed record ChannelPlan
{
    /// <summary>Appliance id, e.g. <c>furnace-1</c>.</summary>
    public required string Appliance { get; init; }

    /// <summary>Channel id within the appliance, e.g. <c>crown</c>.</summary>
    public required string Name { get; init; }

    public required Quantity Quantity { get; init; }

    /// <summary>Appliance and channel: unique in the site.</summary>
    public string Id => $"{Appliance}/{Name}";

    /// <summary>MQTT topic the channel listens to.</summary>
    public required string Topic { get; init; }

    /// <summary>Unit assumed when the payload names none (UCUM or a common spelling); null: the quantity's canonical unit.</summary>
    public string? DefaultUnit { get; init; }

    public ThermocoupleType? Thermocouple { get; init; }

    /// <summary>Id of the channel that measures the terminals, where the thermocouple's voltage is sent.</summary>
    public string? ColdJunction { get; init; }

    /// <summary>How far the sensor of a temperature can be trusted; null where nothing was said of it.</summary>
    public TemperatureUncertainty? Accuracy { get; init; }

    /// <summary>What is added to each of a temperature's readings, by the reading's time.</summary>
    public CalibrationHistory Calibrations { get; init; } = CalibrationHistory.None;

    /// <summary>JSON Pointer (RFC 6901) to the value and the time in a foreign device's payload.</summary>
    public string? ValuePointer { get; init; }
    public string? TimePointer { get; init; }

    /// <summary>How often a reading is expected. Older than three of these is stale.</summary>
    public Duration Interval { get; init; } = Duration.FromSeconds(10);

    /// <summary>The device sends only changes: silence is no fault until a day has passed, and values hold.</summary>
    public bool OnChangeOnly { get; init; }

    /// <summary>Nothing is sent: people read it and type what they read, as entries of the logbook.</summary>
    public bool IsTyped { get; init; }

    /// <summary>Ids of the appliances that a meter serves; empty: the whole studio.</summary>
    public IReadOnlyList<string> Serves { get; init; } = [];

    /// <summary>Id of the meter that this one is said to lie behind.</summary>
    public string? Parent { get; init; }

    /// <summary>What a meter's plate says where nobody wrote it down: the usual class of gas meters in households and trade (common practice).</summary>
    public const double UsualClassPercent = 1.5;

    /// <summary>Accuracy class of a meter or sensor: how far it may be off, in percent either way.</summary>
    public double ClassPercent { get; init; } = UsualClassPercent;

    /// <summary>Values outside are kept but marked implausible and raise no alarm by themselves. Canonical unit.</summary>
    public double PlausibleLow { get; init; } = double.NegativeInfinity;
    public double PlausibleHigh { get; init; } = double.PositiveInfinity;

    /// <summary>Volume of one pulse in m³ where the counter counts pulses.</summary>
    public double? CubicMetresPerPulse { get; init; }

    /// <summary>Digits of a counter before it rolls over.</summary>
    public int? CounterDigits { get; init; }

    /// <summary>The most that can pass through a counter in an hour, canonical unit; tells a rollover from a reset.</summary>
    public double? CounterMaximumPerHour { get; init; }

    /// <summary>Power drawn while the relay is closed or the valve open, kW: what has no meter is estimated from this.</summary>
    public double? NameplateKilowatts { get; init; }

    /// <summary>A gap longer than this is unmeasured; values are never bridged across it.</summary>
    public Duration LongestGap => OnChangeOnly ? Duration.FromHours(26) : Interval * 3;

    /// <summary>A sample older than this on arrival is late: kept and counted, but it never rings.</summary>
    public Duration LiveLag => Duration.Max(Interval * 3, Duration.FromSeconds(60));
}
