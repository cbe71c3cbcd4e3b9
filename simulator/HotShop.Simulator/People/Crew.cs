using HotShop.Simulator.Faults;
using HotShop.Simulator.Plant;
using HotShop.Simulator.Truth;
using NodaTime;

namespace HotShop.Simulator.People;

/// <summary>
/// Does what is planned if the plant allows it, looks at the plant every ten seconds, and writes most of it into the logbook.
/// </summary>
internal sealed class Crew
{
    readonly StudioPlant plant;
    readonly Logbook logbook;
    readonly PotWork pot;
    readonly HiddenTruth truth;
    readonly SimulationOptions options;
    readonly PriorityQueue<CrewAct, (Instant At, long Number)> planned = new();
    readonly Dictionary<string, string> modes = [];
    LocalDate plannedThrough;
    Instant plannedUntil = Instant.MinValue;
    long actNumber;
    bool lastLoadIsIn;

    public Crew(StudioPlant plant, Logbook logbook, HiddenTruth truth, SimulationOptions options)
    {
        (this.plant, this.logbook, this.truth, this.options) = (plant, logbook, truth, options);
        pot = new PotWork(plant, logbook, truth);
        plannedThrough = options.Start.InZone(options.Zone).Date.PlusDays(-3);
        foreach (var order in options.Faults.Where(f => f.Kind == FaultKind.ColdCharge))
            Plan(new ColdCharge(options.Start + order.After, 20));
    }

    /// <summary>Setpoint at which the furnace is held when no charge is cooked, in °C; as at the start.</summary>
    public double HeldCelsius { get; private set; } = Quillmere.WorkingCelsius;

    public string ModeOf(string appliance) => modes.GetValueOrDefault(appliance, "off");

    /// <summary>Brings what stays set to the state of the start, without doing or logging anything else.</summary>
    public void BeginAt(Instant start)
    {
        foreach (var appliance in Quillmere.Appliances) modes[appliance] = appliance == Quillmere.Furnace ? "holding" : "off";
        var furnaceCelsius = Quillmere.WorkingCelsius;
        PlanUntil(start);
        while (planned.TryPeek(out var act, out _) && act.At < start)
        {
            planned.Dequeue();
            if (act is SetFurnace set)
            {
                furnaceCelsius = set.Celsius;
                if (!set.IsForCharge) HeldCelsius = set.Celsius;
            }
            else if (act.IsStanding) Stand(act, start);
        }

        plant.Furnace.SettleAt(furnaceCelsius, plant.RoomCelsius, glassKilograms: 112);
        plant.GloryHole.SettleAt(plant.GloryHole.IsLit ? Quillmere.GloryHoleCelsius : 90, plant.RoomCelsius);
        foreach (var appliance in new[] { Quillmere.FirstAnnealer, Quillmere.SecondAnnealer })
        {
            var annealer = plant.AnnealerNamed(appliance);
            if (ModeOf(appliance) == "working") annealer.HoldAt(Quillmere.AnnealingCelsius);
            annealer.SettleAt(annealer.SetpointCelsius ?? 45, plant.RoomCelsius);
        }

        foreach (var (appliance, mode) in modes.Where(m => m.Key != Quillmere.Shop))
            logbook.Write(appliance, start, start + Duration.FromSeconds(2), "mode", Logbook.Tablet, ("mode", mode));
        Plan(new Dip(start + Duration.FromMinutes(2), new Chance.Draws(options.Seed, "first dip").Normal(0.005), PlansCharge: false));
    }

    public void Step(Instant now)
    {
        PlanUntil(now);
        while (planned.TryPeek(out var act, out _) && act.At <= now)
        {
            planned.Dequeue();
            Do(act, now);
        }

        if ((long)plant.ElapsedSeconds % 10 == 0) LookRound(now);
    }

    void PlanUntil(Instant now)
    {
        while (plannedUntil <= now)
        {
            foreach (var act in DayPlan.For(plannedThrough, options.Zone, plant.Hidden, options.Seed)) Plan(act);
            plannedThrough = plannedThrough.PlusDays(1);
            plannedUntil = options.Zone.AtStartOfDay(plannedThrough).ToInstant();
        }
    }

    void Plan(CrewAct act) => planned.Enqueue(act, (act.At, actNumber++));

    void Stand(CrewAct act, Instant start)
    {
        switch (act)
        {
            case SetMode mode: modes[mode.Appliance] = mode.Mode; break;
            case LightGloryHole light:
                plant.GloryHole.Light(light.IsLit);
                modes[Quillmere.GloryHole] = light.IsLit ? "working" : "off";
                break;
            case HeatAnnealer heat: modes[heat.Appliance] = "working"; break;
            case StartProgramme begin:
                plant.AnnealerNamed(begin.Appliance).Run(begin.Programme, (start - begin.At).TotalHours);
                modes[begin.Appliance] = plant.AnnealerNamed(begin.Appliance).IsRunningProgramme ? "cool-down" : "off";
                break;
        }
    }

    void Do(CrewAct act, Instant now)
    {
        switch (act)
        {
            case SetFurnace set:
                plant.Furnace.Setpoint.LeadTo(set.Celsius, set.KelvinPerHour);
                if (!set.IsForCharge) truth.HeldAt(set.Celsius, set.KelvinPerHour);
                break;
            case SetMode mode: Mode(mode.Appliance, mode.Mode, now); break;
            case LightGloryHole light:
                plant.GloryHole.Light(light.IsLit);
                Mode(Quillmere.GloryHole, light.IsLit ? "heat-up" : "off", now);
                break;
            case OpenGloryHole open: plant.GloryHole.Open(open.Seconds); break;
            case HeatAnnealer heat:
                plant.AnnealerNamed(heat.Appliance).HeatTo(Quillmere.AnnealingCelsius, kelvinPerHour: 350);
                Mode(heat.Appliance, "heat-up", now);
                break;
            case StartProgramme begin:
                plant.AnnealerNamed(begin.Appliance).Run(begin.Programme, hoursAgo: 0);
                Mode(begin.Appliance, "cool-down", now);
                break;
            case EmptyAnnealer empty: Empty(plant.AnnealerNamed(empty.Appliance)); break;
            case PutWareIn put when plant.AnnealerNamed(put.Appliance).Chamber.IndicatedCelsius > 450 && plant.HasMains:
                plant.AnnealerNamed(put.Appliance).Open(12);
                plant.AnnealerNamed(put.Appliance).PutIn(put.Kilograms, celsius: 530);
                break;
            case Gather gather: pot.Take(gather); break;
            case LadleOut ladle: pot.Take(ladle, now); break;
            case Dip dip: pot.Measure(dip, now); break;
            case ColdCharge cold: pot.Charge(cold.Kilograms, isBatch: false, now); break;
            case ChargeLoad load: Charge(load, now); break;
        }
    }

    void Charge(ChargeLoad load, Instant now)
    {
        var weighedKilograms = pot.WeighedLoadKilograms(load.IsBatch);
        if (weighedKilograms > 0)
        {
            if (ModeOf(Quillmere.Furnace) != "charging") Mode(Quillmere.Furnace, "charging", now);
            pot.Charge(weighedKilograms, load.IsBatch, now);
        }

        lastLoadIsIn = load.IsLast;
        if (load.IsLast && ModeOf(Quillmere.Furnace) == "working") Mode(Quillmere.Furnace, "holding", now);
    }

    static void Empty(Annealer annealer)
    {
        if (annealer.Chamber.IndicatedCelsius > 80 || annealer.IsRunningProgramme) return;
        annealer.Open(240);
        annealer.TakeAllOut();
    }

    /// <summary>
    /// What somebody sees who walks past: fires that have come up, programmes that have ended, a charge that has melted flat.
    /// </summary>
    void LookRound(Instant now)
    {
        if (ModeOf(Quillmere.GloryHole) == "heat-up" && plant.GloryHole.Chamber.IndicatedCelsius > 1120) Mode(Quillmere.GloryHole, "working", now);
        if (ModeOf(Quillmere.Furnace) == "charging" && lastLoadIsIn && plant.Furnace.Pot.Heap.IsEmpty) Mode(Quillmere.Furnace, "holding", now);
        foreach (var appliance in new[] { Quillmere.FirstAnnealer, Quillmere.SecondAnnealer })
        {
            var annealer = plant.AnnealerNamed(appliance);
            var mode = ModeOf(appliance);
            if (mode == "heat-up" && annealer.Chamber.IndicatedCelsius > Quillmere.AnnealingCelsius - 5) Mode(appliance, "working", now);
            if (mode == "cool-down" && !annealer.IsRunningProgramme)
            {
                annealer.TurnOff();
                Mode(appliance, "off", now);
            }
        }
    }

    void Mode(string appliance, string mode, Instant now)
    {
        modes[appliance] = mode;
        logbook.Write(appliance, now, now + Duration.FromSeconds(4), "mode", Logbook.Tablet, ("mode", mode));
    }
}
