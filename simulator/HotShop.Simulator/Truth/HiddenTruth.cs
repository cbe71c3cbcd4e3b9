using HotShop.Simulator.Chance;
using HotShop.Simulator.Plant;
using NodaTime;

namespace HotShop.Simulator.Truth;

/// <summary>Gas of one appliance: true gross heat and volume at 15 °C and 101.325 kPa.</summary>
public readonly record struct FuelTruth(double Kilowatthours, double BaseCubicMetres);

/// <summary>What really happened in one hour since the start.</summary>
/// <param name="From">Start of the hour; hours are counted from the start of the simulation.</param>
/// <param name="MeltedKilograms">Glass that melted flat from charges.</param>
/// <param name="HoldingKilowatthours">
/// What the furnace would have burnt at the temperatures it is held at, with nothing charged, nothing gathered and its door shut; <see langword="null"/>
/// unless the simulation was asked for it.
/// </param>
public sealed record TruthHour(
    Instant From, FuelTruth Furnace, FuelTruth GloryHole, double FirstAnnealerKilowatthours, double SecondAnnealerKilowatthours,
    double MeltedKilograms, double TakenKilograms, double GlassKilograms, double? HoldingKilowatthours = null);

/// <summary>
/// The state of the plant that no instrument shows exactly. Whoever judges a service looks here after the service has answered.
/// </summary>
public sealed class HiddenTruth
{
    readonly StudioPlant plant;
    readonly Instant start;
    readonly List<float> glassByMinute = [];
    readonly List<TruthHour> hours = [];
    Totals lastHour;
    HoldingTwin? holding;

    internal HiddenTruth(StudioPlant plant, Instant start) => (this.plant, this.start) = (plant, start);

    /// <summary>What the seed chose.</summary>
    public HiddenParameters Parameters => plant.Hidden;

    public Instant Now => start + Duration.FromSeconds(plant.ElapsedSeconds);

    /// <summary>Glass in the pot, molten or still to melt, without the gas that batch will give off, in kg.</summary>
    public double GlassKilograms => plant.Furnace.Pot.GlassKilograms;

    public double MoltenKilograms => plant.Furnace.Pot.MeltKilograms;

    public double GlassDepthMetres => plant.Furnace.Pot.DepthMetres;

    public double GlassCelsius => plant.Furnace.Pot.Celsius;

    /// <summary>Hot face of the furnace's crown, in °C.</summary>
    public double CrownCelsius => plant.Furnace.Lining.HotFaceCelsius;

    public double GloryHoleCelsius => plant.GloryHole.Lining.HotFaceCelsius;

    public double FirstAnnealerCelsius => plant.FirstAnnealer.Lining.HotFaceCelsius;

    public double SecondAnnealerCelsius => plant.SecondAnnealer.Lining.HotFaceCelsius;

    public FuelTruth FurnaceFuel => Fuel(plant.Furnace.Ledger);

    public FuelTruth GloryHoleFuel => Fuel(plant.GloryHole.Ledger);

    public double FirstAnnealerKilowatthours => plant.FirstAnnealer.Ledger.ElectricKilojoules / 3600;

    public double SecondAnnealerKilowatthours => plant.SecondAnnealer.Ledger.ElectricKilojoules / 3600;

    /// <summary>Glass that melted flat from charges since the start, in kg.</summary>
    public double MeltedKilograms => plant.Furnace.Pot.MeltedKilograms;

    /// <summary>Gathered or ladled since the start, in kg.</summary>
    public double TakenKilograms => plant.Furnace.Pot.TakenKilograms;

    /// <summary>Part of <see cref="TakenKilograms"/> that nobody logged.</summary>
    public double UnloggedKilograms { get; private set; }

    public int Gathers { get; private set; }

    public int UnloggedGathers { get; private set; }

    /// <summary>The full hours since the start.</summary>
    public IReadOnlyList<TruthHour> Hours => hours;

    /// <summary><see cref="GlassKilograms"/> at a past time, to the minute.</summary>
    /// <returns>kg; <see langword="null"/> before the start or in the future.</returns>
    public double? GlassKilogramsAt(Instant time)
    {
        var minute = (int)Math.Floor((time - start).TotalMinutes);
        return minute >= 0 && minute < glassByMinute.Count ? glassByMinute[minute] : null;
    }

    internal void Gathered(double kilograms, bool isLogged)
    {
        Gathers++;
        if (isLogged) return;
        UnloggedGathers++;
        UnloggedKilograms += kilograms;
    }

    /// <summary>From here on, before the first step: see <see cref="TruthHour.HoldingKilowatthours"/>.</summary>
    internal void AddHoldingTwin(double heldCelsius) => holding = new HoldingTwin(plant, heldCelsius);

    internal void HeldAt(double celsius, double kelvinPerHour) => holding?.HoldAt(celsius, kelvinPerHour);

    /// <summary>Keeps the history; called after every step.</summary>
    internal void Keep()
    {
        if (plant.ElapsedSeconds > 0) holding?.Step();
        var elapsed = (long)plant.ElapsedSeconds;
        if (elapsed % 60 == 0) glassByMinute.Add((float)GlassKilograms);
        if (elapsed % 3600 != 0 || elapsed == 0) return;
        var now = new Totals(FurnaceFuel, GloryHoleFuel, FirstAnnealerKilowatthours, SecondAnnealerKilowatthours, MeltedKilograms, TakenKilograms, holding?.Kilowatthours);
        hours.Add(new TruthHour(Now - Duration.FromHours(1), Less(now.Furnace, lastHour.Furnace), Less(now.GloryHole, lastHour.GloryHole),
            now.First - lastHour.First, now.Second - lastHour.Second, now.Melted - lastHour.Melted, now.Taken - lastHour.Taken, GlassKilograms, now.Holding - (lastHour.Holding ?? 0)));
        lastHour = now;
    }

    FuelTruth Fuel(HeatLedger ledger)
    {
        var kilowatthours = ledger.FuelKilojoules / 3600;
        return new(kilowatthours, kilowatthours / (plant.Hidden.CalorificMegajoulesPerCubicMetre / 3.6));
    }

    static FuelTruth Less(FuelTruth later, FuelTruth earlier) =>
        new(later.Kilowatthours - earlier.Kilowatthours, later.BaseCubicMetres - earlier.BaseCubicMetres);

    readonly record struct Totals(FuelTruth Furnace, FuelTruth GloryHole, double First, double Second, double Melted, double Taken, double? Holding);
}
