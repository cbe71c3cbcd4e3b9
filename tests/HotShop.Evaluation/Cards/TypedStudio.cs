using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Simulator;
using HotShop.Simulator.Truth;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// The simulated studio as most studios are: no gas sensor, but meters on the wall that somebody reads twice a week, at no fixed hour, black digits only.
/// The configuration knows the burners' nameplates and the bill, nothing of the plant.
/// </summary>
static class TypedStudio
{
    public const string FirstMeter = "furnace-1/meter", SecondMeter = "glory-hole-1/meter", MainMeter = "shop/meter";

    static readonly ChannelOptions wallMeter = new() { Id = "meter", Quantity = "gas-volume", Reports = "typed", CounterDigits = 5 };

    /// <param name="hasSubMeters">Furnace and glory hole have wall meters of their own, one digit finer.</param>
    public static StudioConfiguration Configuration(StudioConfiguration demo, bool hasSubMeters) => demo with
    {
        Prices = [.. demo.Prices.Where(p => p.Energy == "gas")],
        Appliances =
        [
            Bare(demo, Quillmere.Furnace, 95, hasSubMeters), Bare(demo, Quillmere.GloryHole, 85, hasSubMeters),
            demo.Appliances.First(a => a.Id == Quillmere.Shop) with { Channels = [wallMeter] },
        ],
    };

    static ApplianceOptions Bare(StudioConfiguration demo, string id, double nameplateKilowatts, bool hasSubMeter) =>
        demo.Appliances.First(a => a.Id == id) with { NameplateKilowatts = nameplateKilowatts, Channels = hasSubMeter ? [wallMeter] : [], Alarms = new Dictionary<string, AlarmOptions>() };

    /// <summary>When somebody goes and reads: Monday or Tuesday morning, and Thursday or Friday late in the afternoon.</summary>
    public static IReadOnlyList<Instant> Times(int seed, Instant from, Instant to, DateTimeZone zone)
    {
        var chance = new Random(seed * 7919 + 17);
        var times = new List<Instant>();
        var last = to.InZone(zone).Date;
        for (var monday = from.InZone(zone).Date.Next(IsoDayOfWeek.Monday).PlusDays(-7); monday <= last; monday = monday.PlusDays(7))
        {
            Add(monday.PlusDays(chance.Next(2)), chance.Next(8 * 60, 11 * 60));
            Add(monday.PlusDays(3 + chance.Next(2)), chance.Next(16 * 60, 19 * 60));
        }
        return times;

        void Add(LocalDate day, int minutes)
        {
            var at = day.At(LocalTime.Midnight.PlusMinutes(minutes / 10 * 10)).InZoneLeniently(zone).ToInstant();
            if (at > from && at < to) times.Add(at);
        }
    }

    /// <summary>A sub-meter's register: what really passed, in the state the gas has there, times its hidden error; read to 0.1 m³.</summary>
    public static double SubMeter(FuelTruth fuel, HiddenTruth truth, double factor)
    {
        var hidden = truth.Parameters;
        var baseFactor = (1013.25 + hidden.GasGaugeMillibar) / 1013.25 * 288.15 / (273.15 + hidden.GasCelsius);
        return Math.Floor(fuel.BaseCubicMetres / baseFactor * factor * 10) / 10;
    }

    public static DeviceMessage Reading(string meter, double reading, Instant at) => new(
        at, "dev-bench", $"hotshop/{Quillmere.Site}/{meter.Split('/')[0]}/log",
        string.Create(CultureInfo.InvariantCulture, $$"""{"entry":"meter-reading","reading":{{reading:0.#}},"unit":"m3","time":"{{InstantPattern.ExtendedIso.Format(at)}}"}"""), Retain: false);
}
