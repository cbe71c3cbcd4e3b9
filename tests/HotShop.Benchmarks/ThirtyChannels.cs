using HotShop.Monitor.Configuration;

namespace HotShop.Benchmarks;

/// <summary>A studio of five furnaces' worth of sensors: thirty channels on five appliances, six each, every ten seconds.</summary>
static class ThirtyChannels
{
    public const int Appliances = 5, PerAppliance = 6, IntervalSeconds = 10;

    static readonly (string Id, string Quantity)[] Channels =
        [("crown", "temperature"), ("wall", "temperature"), ("setpoint", "setpoint"), ("gas-flow", "gas-flow"), ("power", "power"), ("pressure", "pressure")];

    public static IEnumerable<(string Topic, string Appliance, string Channel)> Topics =>
        from a in Enumerable.Range(1, Appliances)
        from c in Channels
        select ($"hotshop/bench/furnace-{a}/{c.Id}", $"furnace-{a}", c.Id);

    public static StudioConfiguration Configuration(string folder, StoreOptions store) => new()
    {
        Site = "bench",
        Name = "Bench",
        Zone = "Europe/Berlin",
        DataDirectory = folder,
        Store = store with { BallastMebibytes = 1 },
        Prices = [new() { From = "2020-01-01", Energy = "gas", PerKilowattHour = 0.11m }, new() { From = "2020-01-01", Energy = "electricity", PerKilowattHour = 0.31m }],
        Appliances = [.. Enumerable.Range(1, Appliances).Select(Furnace)],
    };

    static ApplianceOptions Furnace(int number) => new()
    {
        Id = $"furnace-{number}",
        Kind = "furnace",
        Mode = "holding",
        Pot = number == 1 ? new() { DiameterCentimetres = 46, HeightCentimetres = 45, StartKilograms = 100 } : null,
        Channels = [.. Channels.Select(c => new ChannelOptions { Id = c.Id, Quantity = c.Quantity, IntervalSeconds = IntervalSeconds })],
    };

    /// <summary>A value as such a sensor shows it, moving a little with each sample.</summary>
    public static double Value(string channel, long sample) => channel switch
    {
        "crown" => 1148 + Math.Round(3 * Math.Sin(sample / 57.0) + 0.7 * Math.Sin(sample * 1.7), 1),
        "wall" => 1131 + Math.Round(2 * Math.Sin(sample / 91.0) + 0.5 * Math.Sin(sample * 2.3), 1),
        "setpoint" => 1150,
        "gas-flow" => Math.Round(2.4 + 0.3 * Math.Sin(sample / 23.0) + 0.01 * Math.Sin(sample * 3.1), 3),
        "power" => Math.Round(0.35 + 0.02 * Math.Sin(sample * 1.1), 3),
        _ => Math.Round(1.9 + 0.1 * Math.Sin(sample / 7.0), 2),
    };
}
