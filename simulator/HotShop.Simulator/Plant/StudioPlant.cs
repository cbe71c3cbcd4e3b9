using HotShop.Simulator.Chance;
using HotShop.Simulator.Faults;

namespace HotShop.Simulator.Plant;

/// <summary>The whole plant, stepped together. Knows no clock, no wire and no people.</summary>
internal sealed class StudioPlant
{
    /// <summary>Inner step, in s: the quickest part (an annealer's relay) moves every few seconds.</summary>
    public const int StepSeconds = 2;

    readonly FaultSchedule faults;
    readonly double baseCubicMetresPerMetered;

    public StudioPlant(HiddenParameters hidden, FaultSchedule faults)
    {
        (Hidden, this.faults) = (hidden, faults);
        Glass = new GlassEnthalpy(hidden.GlassHeatFactor);
        Furnace = new MeltingFurnace(hidden, Glass);
        GloryHole = new GloryHole(hidden);
        FirstAnnealer = new Annealer(new(hidden.FirstAnnealerKilowatts, hidden.FirstAnnealerLossFactor, hidden.FirstAnnealerOffsetKelvin, IsSwitched: true), Glass);
        SecondAnnealer = new Annealer(new(hidden.SecondAnnealerKilowatts, hidden.SecondAnnealerLossFactor, hidden.SecondAnnealerOffsetKelvin, IsSwitched: false), Glass);
        baseCubicMetresPerMetered = (1013.25 + hidden.GasGaugeMillibar) / 1013.25 * 288.15 / (273.15 + hidden.GasCelsius);
    }

    public HiddenParameters Hidden { get; }
    public GlassEnthalpy Glass { get; }
    public MeltingFurnace Furnace { get; }
    public GloryHole GloryHole { get; }
    public Annealer FirstAnnealer { get; }
    public Annealer SecondAnnealer { get; }
    public ShopAir Air { get; } = new();
    public bool HasMains { get; private set; } = true;
    public double RoomCelsius { get; private set; } = 22;
    public double ElapsedSeconds { get; private set; }

    /// <summary>True volume through the shop's meter in the state the gas has there, in m³ since the start.</summary>
    public double MeteredCubicMetres { get; private set; }

    public Annealer AnnealerNamed(string appliance) => appliance == Quillmere.FirstAnnealer ? FirstAnnealer : SecondAnnealer;

    /// <summary>Volume in the meter for a volume at base conditions (15 °C, 101.325 kPa).</summary>
    public double Metered(double baseCubicMetres) => baseCubicMetres / baseCubicMetresPerMetered;

    public bool Has(FaultKind kind, string appliance) => faults.Has(kind, appliance, ElapsedSeconds);

    /// <param name="hourOfDay">Local, 0 to 24: the shop is warmest in the afternoon.</param>
    public void Step(double hourOfDay)
    {
        ElapsedSeconds += StepSeconds;
        RoomCelsius = 23 + 5 * Math.Cos((hourOfDay - 15) / 24 * 2 * Math.PI);
        HasMains = !Has(FaultKind.PowerCut, Quillmere.Shop);
        var gasLostEverywhere = Has(FaultKind.GasSupplyLost, Quillmere.Shop);
        Furnace.Step(StepSeconds, Around(Quillmere.Furnace, gasLostEverywhere), FaultsOf(Quillmere.Furnace));
        GloryHole.Step(StepSeconds, Around(Quillmere.GloryHole, gasLostEverywhere), FaultsOf(Quillmere.GloryHole));
        FirstAnnealer.Step(StepSeconds, new(RoomCelsius, HasMains, HasGas: false), FaultsOf(Quillmere.FirstAnnealer));
        SecondAnnealer.Step(StepSeconds, new(RoomCelsius, HasMains, HasGas: false), FaultsOf(Quillmere.SecondAnnealer));

        var (first, second) = (Furnace.Burner, GloryHole.Burner);
        var unburnt = first.UnburntCubicMetresPerHour + second.UnburntCubicMetresPerHour;
        var all = first.GasCubicMetresPerHour + second.GasCubicMetresPerHour;
        MeteredCubicMetres += Metered(all) * StepSeconds / 3600;
        Air.Step(StepSeconds, unburnt, all - unburnt);
    }

    Surroundings Around(string appliance, bool gasLostEverywhere) =>
        new(RoomCelsius, HasMains, !gasLostEverywhere && !Has(FaultKind.GasSupplyLost, appliance));

    ApplianceFaults FaultsOf(string appliance) => faults.IsEmpty ? default : new(
        Has(FaultKind.FlameOutWithGas, appliance), Has(FaultKind.Overheat, appliance), Has(FaultKind.BurnerCycling, appliance),
        Has(FaultKind.DoorLeftOpen, appliance), Has(FaultKind.CoupleOpen, appliance), Has(FaultKind.ElementFailed, appliance),
        faults.HoursSinceStart(FaultKind.CoupleDrifting, appliance, ElapsedSeconds));
}
