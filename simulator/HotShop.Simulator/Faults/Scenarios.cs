using HotShop.Simulator.People;
using NodaTime;

namespace HotShop.Simulator.Faults;

/// <summary>A story with a name: which faults come when.</summary>
public sealed record Scenario(string Name, string Tells, IReadOnlyList<FaultOrder> Faults);

/// <summary>
/// The stories that can be ordered by name. They look for a fitting hour after the start: a glory hole cannot fail at night, when it
/// is off.
/// </summary>
public static class Scenarios
{
    public static readonly IReadOnlyList<string> Names = ["ordinary-day", "normal-life", "first-light", "night-watch", "every-fault"];

    /// <returns><see langword="null"/> when there is no scenario of the name.</returns>
    public static Scenario? Named(string name, Instant start, DateTimeZone zone) => name switch
    {
        "ordinary-day" => new(name, "work, charging and rest, nothing goes wrong", []),
        "normal-life" => new(name, "a cold charge, a cycling burner, a door held open: nothing that should wake anybody", NormalLife()),
        "first-light" => new(name, "a sensor falls silent, a flame goes out with the gas on, an annealer loses its elements; all is mended within a day", FirstLight(start, zone)),
        "night-watch" => new(name, "the furnace loses its flame at night, then the mains fail, then a couple begins to drift", NightWatch(start, zone)),
        "every-fault" => new(name, "one fault of each kind, six hours apart from the first late morning on", EveryFault(start, zone)),
        _ => null,
    };

    static FaultOrder[] NormalLife() =>
    [
        Order(FaultKind.ColdCharge, Quillmere.Furnace, Duration.FromHours(2), 5),
        Order(FaultKind.BurnerCycling, Quillmere.Furnace, Duration.FromHours(4), 180),
        Order(FaultKind.DoorLeftOpen, Quillmere.GloryHole, Duration.FromHours(3), 20),
    ];

    static FaultOrder[] FirstLight(Instant start, DateTimeZone zone)
    {
        var silence = Order(FaultKind.SilentDevice, Quillmere.SecondAnnealer, Duration.FromMinutes(40), 15);
        var atWork = NextAtWork(start + Duration.FromHours(1), zone, 10.5, 16.5) - start;
        if (atWork > Duration.FromHours(18))
            return [silence, Order(FaultKind.FlameOutWithGas, Quillmere.Furnace, Duration.FromHours(2), 20)];
        return
        [
            silence,
            Order(FaultKind.FlameOutWithGas, Quillmere.GloryHole, atWork, 20),
            Order(FaultKind.ElementFailed, Quillmere.FirstAnnealer, atWork + Duration.FromHours(1), 60),
        ];
    }

    static FaultOrder[] NightWatch(Instant start, DateTimeZone zone)
    {
        var night = NextClock(start + Duration.FromMinutes(30), zone, new LocalTime(2, 14)) - start;
        return
        [
            Order(FaultKind.FlameOutWithGas, Quillmere.Furnace, night, 35),
            Order(FaultKind.PowerCut, Quillmere.Shop, night + Duration.FromHours(2), 12),
            Order(FaultKind.CoupleDrifting, Quillmere.Furnace, night + Duration.FromHours(4), 240),
        ];
    }

    static FaultOrder[] EveryFault(Instant start, DateTimeZone zone)
    {
        var first = NextAtWork(start + Duration.FromHours(1), zone, 10.5, 11.5) - start;
        (FaultKind Kind, string Appliance, int Minutes)[] row =
        [
            (FaultKind.FlameOutWithGas, Quillmere.GloryHole, 20), (FaultKind.ElementFailed, Quillmere.FirstAnnealer, 90),
            (FaultKind.GasSupplyLost, Quillmere.Shop, 25), (FaultKind.PowerCut, Quillmere.Shop, 10),
            (FaultKind.SilentDevice, Quillmere.Furnace, 15), (FaultKind.HeldBackDevice, Quillmere.SecondAnnealer, 60),
            (FaultKind.CoupleOpen, Quillmere.Furnace, 15), (FaultKind.CoupleDrifting, Quillmere.SecondAnnealer, 120),
            (FaultKind.DoorLeftOpen, Quillmere.FirstAnnealer, 30), (FaultKind.Overheat, Quillmere.Furnace, 60),
        ];
        return [.. row.Select((f, i) => Order(f.Kind, f.Appliance, first + Duration.FromHours(6) * i, f.Minutes))];
    }

    /// <summary>The first time from an instant on that lies on a working day between two hours of the day.</summary>
    static Instant NextAtWork(Instant from, DateTimeZone zone, double firstHour, double lastHour)
    {
        for (var at = from; ; at += Duration.FromMinutes(5))
        {
            var local = at.InZone(zone);
            var hour = local.NanosecondOfDay / 3.6e12;
            if (DayPlan.IsWorkingDay(local.Date) && hour >= firstHour && hour <= lastHour) return at;
        }
    }

    static Instant NextClock(Instant from, DateTimeZone zone, LocalTime clock)
    {
        var today = from.InZone(zone).Date.At(clock).InZoneLeniently(zone).ToInstant();
        return today >= from ? today : from.InZone(zone).Date.PlusDays(1).At(clock).InZoneLeniently(zone).ToInstant();
    }

    static FaultOrder Order(FaultKind kind, string appliance, Duration after, int minutes) => new(kind, appliance, after, Duration.FromMinutes(minutes));
}
