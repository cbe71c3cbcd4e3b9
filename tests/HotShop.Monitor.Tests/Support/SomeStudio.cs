using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Tests.Support;

/// <summary>A small studio that has one of every kind of sensor the store and the figures care about.</summary>
static class SomeStudio
{
    public static readonly StudioConfiguration Configuration = new()
    {
        Site = "quillmere",
        Name = "Quillmere Hot Shop",
        Zone = "Europe/Berlin",
        Http = new() { Listen = "127.0.0.1:0" },
        Broker = new() { Listen = "127.0.0.1:0" },
        Store = new() { BallastMebibytes = 1 },
        Prices =
        [
            new() { From = "2020-01-01", Energy = "gas", PerKilowattHour = 0.10m },
            new() { From = "2020-01-01", Energy = "electricity", PerKilowattHour = 0.30m },
        ],
        Appliances =
        [
            new()
            {
                Id = "furnace-1", Name = "Furnace 1", Kind = "furnace", Position = 1,
                Pot = new() { DiameterCentimetres = 46, HeightCentimetres = 45, StartKilograms = 100, HeelKilograms = 8 },
                Channels =
                [
                    Channel("crown", "temperature"), Channel("gas-flow", "gas-flow"), Channel("setpoint", "setpoint"),
                    Channel("couple", "temperature") with { Unit = "mV", Thermocouple = "S", ColdJunction = "terminal" }, Channel("terminal", "temperature"),
                    Channel("flame", "flame", 60), Channel("door", "door") with { Reports = "on-change" },
                ],
            },
            new() { Id = "glory-hole-1", Kind = "glory-hole", Position = 2, Mode = "off", Channels = [Channel("chamber", "temperature"), Channel("valve", "valve", 60) with { NameplateKilowatts = 60 }] },
            new() { Id = "annealer-1", Kind = "annealer", Position = 3, Channels = [Channel("chamber", "temperature", 30), Channel("relay", "relay") with { Reports = "on-change", NameplateKilowatts = 8 }] },
            new() { Id = "annealer-2", Kind = "annealer", Position = 4, Channels = [Channel("power", "power")] },
            new() { Id = "annealer-3", Kind = "annealer", Position = 5, Channels = [Channel("energy", "energy", 60)] },
            new() { Id = "shop", Kind = "shop", Position = 0, Channels = [Channel("meter", "gas-volume", 60) with { CounterDigits = 5, CounterMaximumPerHour = 20 }, Channel("mains", "mains", 60)] },
        ],
    };

    public static ChannelOptions Channel(string id, string quantity, double seconds = 10) => new() { Id = id, Quantity = quantity, IntervalSeconds = seconds };

    /// <summary>The same studio with something changed in one appliance.</summary>
    public static StudioConfiguration With(string appliance, Func<ApplianceOptions, ApplianceOptions> change) =>
        Configuration with { Appliances = [.. Configuration.Appliances.Select(a => a.Id == appliance ? change(a) : a)] };

    /// <summary>The same studio with something changed in one channel.</summary>
    public static StudioConfiguration With(string appliance, string channel, Func<ChannelOptions, ChannelOptions> change) =>
        With(appliance, a => a with { Channels = [.. a.Channels.Select(c => c.Id == channel ? change(c) : c)] });
}
