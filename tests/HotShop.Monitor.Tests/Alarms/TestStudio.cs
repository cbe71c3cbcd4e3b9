using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>A small studio with one of everything, described as its owner would.</summary>
static class TestStudio
{
    public static readonly StudioConfiguration Configuration = new()
    {
        Site = "quillmere",
        Zone = "Europe/Berlin",
        Appliances =
        [
            new()
            {
                Id = "furnace-1", Name = "Furnace 1", Kind = "furnace", Mode = "holding",
                Channels =
                [
                    Channel("crown", "temperature") with { Thermocouple = "S", ColdJunction = "terminal" }, Channel("terminal", "temperature"), Channel("setpoint", "setpoint"),
                    Channel("gas-flow", "gas-flow"), Channel("flame", "flame"), Channel("call-for-heat", "call-for-heat"), Channel("lock-out", "lock-out"),
                ],
            },
            new()
            {
                Id = "glory-hole-1", Name = "Glory hole 1", Kind = "glory-hole", Mode = "working",
                Channels = [Channel("chamber", "temperature"), Channel("gas-flow", "gas-flow"), Channel("flame", "flame"), Channel("door", "door") with { Reports = "on-change" }],
            },
            new() { Id = "furnace-2", Name = "Furnace 2", Kind = "furnace", Mode = "holding", Channels = [Channel("crown", "temperature"), Channel("gas-flow", "gas-flow")] },
            new() { Id = "annealer-1", Name = "Annealer 1", Kind = "annealer", Mode = "working", Channels = [Channel("chamber", "temperature"), Channel("setpoint", "setpoint")] },
            new()
            {
                Id = "shop", Name = "Shop", Kind = "shop",
                Channels = [Channel("mains", "mains"), Channel("carbon-monoxide", "carbon-monoxide"), Channel("combustible-gas", "combustible-gas"), Channel("burner-fault", "lock-out") with { Reports = "on-change" }],
            },
        ],
    };

    public static StudioPlan Plan { get; } = PlanBuilder.Build(Configuration, "/");

    /// <summary>The same studio with something changed in one appliance.</summary>
    public static StudioPlan With(string appliance, Func<ApplianceOptions, ApplianceOptions> change) =>
        PlanBuilder.Build(Changed(appliance, change), "/");

    public static StudioConfiguration Changed(string appliance, Func<ApplianceOptions, ApplianceOptions> change) =>
        Configuration with { Appliances = [.. Configuration.Appliances.Select(a => a.Id == appliance ? change(a) : a)] };

    public static ApplianceOptions Without(this ApplianceOptions appliance, string channel) =>
        appliance with { Channels = [.. appliance.Channels.Where(c => c.Id != channel)] };

    public static ApplianceOptions WithAlarm(this ApplianceOptions appliance, string kind, AlarmOptions options) =>
        appliance with { Alarms = new Dictionary<string, AlarmOptions>(appliance.Alarms) { [kind] = options } };

    static ChannelOptions Channel(string id, string quantity) => new() { Id = id, Quantity = quantity, IntervalSeconds = 10 };
}
