using HotShop.Simulator.Plant;
using HotShop.Simulator.Truth;
using NodaTime;

namespace HotShop.Simulator.People;

/// <summary>What people do at the pot, and what they write down about it.</summary>
internal sealed class PotWork(StudioPlant plant, Logbook logbook, HiddenTruth truth)
{
    const double CoolestToGatherCelsius = 1040, LeastKilogramsToGather = 35, CoolestToChargeCelsius = 1000, NotWorthChargingKilograms = 6;

    double loadKilograms;

    bool CanGather =>
        plant.HasMains && plant.Furnace.Pot.Celsius > CoolestToGatherCelsius && plant.Furnace.Pot.MeltKilograms > LeastKilogramsToGather;

    public void Take(Gather gather)
    {
        if (!CanGather) return;
        plant.Furnace.Open(seconds: 12, forCharging: false);
        plant.Furnace.Pot.Take(gather.Kilograms, plant.Furnace.Ledger);
        truth.Gathered(gather.Kilograms, gather.LoggedSize is not null);
        if (gather.LoggedSize is { } size)
            logbook.Write(Quillmere.Furnace, gather.At, gather.At + gather.LoggedAfter, "gather", gather.Who, ("size", NameOf(size)), ("count", 1));
    }

    public void Take(LadleOut ladle, Instant now)
    {
        if (!CanGather) return;
        plant.Furnace.Pot.Take(ladle.Kilograms, plant.Furnace.Ledger);
        logbook.Write(Quillmere.Furnace, now, now, "ladle-out", Logbook.Tablet, ("mass", ladle.LoggedKilograms), ("unit", "kg"));
    }

    /// <summary>Reads the depth with the rod, on flat glass only.</summary>
    public void Measure(Dip dip, Instant now)
    {
        if (!plant.Furnace.Pot.Heap.IsEmpty || !plant.HasMains) return;
        var readMetres = plant.Furnace.Pot.DepthMetres + dip.ErrorMetres;
        plant.Furnace.Open(seconds: 15, forCharging: false);
        logbook.Write(Quillmere.Furnace, now, now, "dip", Logbook.Tablet, ("glassDepth", Math.Round(readMetres * 100, 1)), ("unit", "cm"));
        if (!dip.PlansCharge) return;
        var missingKilograms = (Quillmere.FullDepthMetres - readMetres) * Math.PI * Quillmere.PotRadiusMetres * Quillmere.PotRadiusMetres
            * Quillmere.NominalMeltKilogramsPerCubicMetre;
        loadKilograms = missingKilograms > NotWorthChargingKilograms ? missingKilograms / DayPlan.ChargeLoads : 0;
    }

    /// <summary>What the crew weighs out for one of the evening's loads, to the half kilogram; 0 when the pot is full enough.</summary>
    public double WeighedLoadKilograms(bool isBatch) => Math.Round(loadKilograms / (isBatch ? Quillmere.BatchYield : 1) * 2) / 2;

    public void Charge(double weighedKilograms, bool isBatch, Instant now)
    {
        var furnace = plant.Furnace;
        if (!plant.HasMains || furnace.Pot.Celsius < CoolestToChargeCelsius) return;
        var kilograms = weighedKilograms / plant.Hidden.ScaleFactor;
        furnace.Open(seconds: 240, forCharging: true);
        furnace.Pot.Charge(isBatch ? 0 : kilograms, isBatch ? kilograms : 0, plant.RoomCelsius, furnace.Ledger);
        logbook.Write(Quillmere.Furnace, now, now + Duration.FromSeconds(30), "charge", Logbook.Tablet,
            ("material", isBatch ? "batch" : "cullet"), ("mass", weighedKilograms), ("unit", "kg"));
    }

    static string NameOf(GatherSize size) => size switch { GatherSize.Small => "small", GatherSize.Medium => "medium", _ => "large" };
}
