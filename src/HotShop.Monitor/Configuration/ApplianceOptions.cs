using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

public sealed record ApplianceOptions
{
    [Description("Id: lower-case letters, digits, '-'. Third level of its topics.")]
    public required string Id { get; init; }

    public string? Name { get; init; }

    [Description("furnace, glory-hole, annealer, pick-up-oven, or shop (meter, mains and gas sensors of the room).")]
    public required string Kind { get; init; }

    [Description("Place from left to right in the drawing of the room; lower is further left.")]
    public double Position { get; init; }

    [Description("Mode at first start: off, heat-up, holding, charging, working, cool-down or out-of-service.")]
    public string Mode { get; init; } = "holding";

    [Description("Full fire of its burner, or full power of its elements, in kW as on the nameplate: where it has no meter of its own, its share of the main meter is estimated from this and from its modes.")]
    public double? NameplateKilowatts { get; init; }

    [Description("What that nameplate burns: gas or electricity. Left out: gas for a furnace, a glory hole and the shop, electricity for the rest.")]
    public string? Energy { get; init; }

    [Description("Changes of mode by the clock.")]
    public IReadOnlyList<TimetableEntry> Timetable { get; init; } = [];

    public required IReadOnlyList<ChannelOptions> Channels { get; init; }

    [Description("The pot of a furnace; without it no glass is counted.")]
    public PotOptions? Pot { get; init; }

    [Description("How its flue is measured, for a gas fire with an oxygen channel.")]
    public FlueOptions? Flue { get; init; }

    [Description("Changes to the alarms this appliance has by default, by kind of alarm.")]
    public IReadOnlyDictionary<string, AlarmOptions> Alarms { get; init; } = new Dictionary<string, AlarmOptions>();
}

public sealed record TimetableEntry
{
    [Description("Days, e.g. mon-fri or tue,thu,sat or daily.")]
    public string Days { get; init; } = "daily";

    [Description("Time of day in the studio's zone, HH:MM.")]
    public required string At { get; init; }

    public required string Mode { get; init; }
}

public sealed record ChannelOptions
{
    [Description("Id: lower-case letters, digits, '-'. Fourth level of its topic.")]
    public required string Id { get; init; }

    [Description("What it measures, e.g. temperature, gas-flow, flame. The manual lists all.")]
    public required string Quantity { get; init; }

    [Description("Unit of plain numbers (UCUM), e.g. Cel, [degF], mV, m3/h, [cft_i]/h. Left out: the quantity's own.")]
    public string? Unit { get; init; }

    [Description("Thermocouple type: B, E, J, K, N, R, S or T. Needed where millivolts are sent, and for the class of its wire in 'accuracy'.")]
    public string? Thermocouple { get; init; }

    [Description("Channel of this appliance that measures the terminals, where millivolts are sent.")]
    public string? ColdJunction { get; init; }

    [Description("How far a temperature can be trusted; it is then shown with its interval.")]
    public AccuracyOptions? Accuracy { get; init; }

    [Description("Corrections of a temperature from calibrations, each from its day on. They are added to each reading; the reading as it came is kept beside.")]
    public IReadOnlyList<CalibrationOptions> Calibrations { get; init; } = [];

    [Description("Seconds between readings; older than three of them is stale.")]
    public double IntervalSeconds { get; init; } = 10;

    [Description("periodic, on-change for devices that speak only when something changes, or typed for a meter that people read: its readings are log entries.")]
    public string Reports { get; init; } = "periodic";

    [Description("Any topic, for devices that cannot use ours.")]
    public string? Topic { get; init; }

    [Description("JSON Pointer (RFC 6901) to the value in a foreign payload, e.g. /sensors/0/t.")]
    public string? ValuePointer { get; init; }

    [Description("JSON Pointer to the time (RFC 3339) in a foreign payload.")]
    public string? TimePointer { get; init; }

    [Description("Values below are marked implausible. With unit, e.g. '0 °C'.")]
    public string? PlausibleLow { get; init; }

    [Description("Values above are marked implausible. With unit, e.g. '1450 °C'.")]
    public string? PlausibleHigh { get; init; }

    [Description("Volume of one pulse in m³, for gas-volume in {pulse}.")]
    public double? CubicMetresPerPulse { get; init; }

    [Description("Digits of a counter before it starts again at 0.")]
    public int? CounterDigits { get; init; }

    [Description("The most that can pass the counter in an hour (m³ or kWh).")]
    public double? CounterMaximumPerHour { get; init; }

    [Description("Accuracy class of a meter or sensor of gas or electricity, as on its plate: how far it may be off, in percent either way. Left out: 1.5.")]
    public double? Class { get; init; }

    [Description("Appliances that a meter serves. Left out: its own appliance; for one of the shop the whole studio, which makes it the main meter.")]
    public IReadOnlyList<string> Serves { get; init; } = [];

    [Description("Meter that this one lies behind, as APPLIANCE/CHANNEL. Left out: the smallest that serves the same appliances and more.")]
    public string? Parent { get; init; }

    [Description("Power in kW while a relay is closed or a valve open, from the nameplate: energy is then estimated.")]
    public double? NameplateKilowatts { get; init; }
}

public sealed record PotOptions
{
    [Description("cylinder, cone (tapered) or rounded (cylinder with a rounded bottom edge).")]
    public string Shape { get; init; } = "cylinder";

    [Description("Inner diameter at the rim in cm.")]
    public required double DiameterCentimetres { get; init; }

    [Description("Inner diameter at the bottom in cm, for a cone.")]
    public double? BottomDiameterCentimetres { get; init; }

    [Description("Radius of the rounded bottom edge in cm, for a rounded pot.")]
    public double? CornerRadiusCentimetres { get; init; }

    [Description("Inner height in cm.")]
    public required double HeightCentimetres { get; init; }

    [Description("Glass in the pot when the service first starts, in kg; null: not known until the first dip.")]
    public double? StartKilograms { get; init; }

    [Description("Glass left in the bottom that is not worked, in kg.")]
    public double HeelKilograms { get; init; } = 5;

    [Description("Mass of a gather by size, in kg.")]
    public IReadOnlyDictionary<string, double> GatherKilograms { get; init; } =
        new Dictionary<string, double> { ["small"] = 0.15, ["medium"] = 0.4, ["large"] = 0.8 };

    [Description("Glass that stays of a kilogram charged, by material, where the bag says other than usual: e.g. { \"batch\": 0.83 }.")]
    public IReadOnlyDictionary<string, double> GlassYields { get; init; } = new Dictionary<string, double>();

    [Description("The glass in the pot; it must match what is melted, ask its maker. Left out: soft studio soda-lime.")]
    public GlassOptions? Glass { get; init; }

    [Description("Raw materials of the studio's batch in kg or parts, from which the glass it leaves is computed: e.g. { \"sand\": 60, \"soda ash\": 20, \"limestone\": 16, \"soda feldspar\": 4 }.")]
    public IReadOnlyDictionary<string, double> BatchRecipe { get; init; } = new Dictionary<string, double>();

    [Description("How far the scale on which charges are weighed may be off, in percent either way.")]
    public double ScaleUncertaintyPercent { get; init; } = 1;

    [Description("Hours from the last charge until the glass is clear, usually 10 to 16 (common practice).")]
    public double HoursToClear { get; init; } = 12;
}

public sealed record AlarmOptions
{
    [Description("false: this alarm is not raised for this appliance.")]
    public bool Enabled { get; init; } = true;

    [Description("Limit with unit, e.g. '1290 °C', '2350 °F', '70 ppm', '15 K'.")]
    public string? Limit { get; init; }

    [Description("How far the value must come back before the alarm clears, with unit.")]
    public string? Deadband { get; init; }

    public double? OnDelaySeconds { get; init; }
    public double? OffDelaySeconds { get; init; }

    [Description("1 wakes people at once, 2 calls, 3 waits for the morning.")]
    public int? Priority { get; init; }
}
