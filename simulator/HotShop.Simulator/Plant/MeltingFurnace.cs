using HotShop.Physics.Radiation;
using HotShop.Simulator.Chance;

namespace HotShop.Simulator.Plant;

/// <summary>The pot furnace: burner, three layers of lining, pot, gathering port, and a controller on the crown couple.</summary>
internal sealed class MeltingFurnace
{
    const double GapSquareMetres = 0.0085, PortSquareMetres = 0.045, ChargingSquareMetres = 0.12, HighLimitCelsius = 1300;

    // Room air drawn in at the open door passes the couple.
    const double ChargingDraughtKelvin = 55;

    readonly double lossFactor;
    readonly FireControl control = new(bandKelvin: 45, integralSeconds: 900);
    double openUntilSeconds, openSquareMetres, elapsedSeconds;
    bool cycleIsOn = true, isTripped;

    public MeltingFurnace(HiddenParameters hidden, GlassEnthalpy glass)
    {
        lossFactor = hidden.FurnaceLossFactor;
        Lining = new Lining([130, 320, 300], [17 * lossFactor, 8.6 * lossFactor, 70]);
        Pot = new GlassPot(glass, hidden.MeltKilogramsPerCubicMetre);
        Burner = new Burner(new BurnerBuild(9, 95, hidden.CalorificMegajoulesPerCubicMetre / 3.6, hidden.FurnaceExcessAirFraction));
        Crown = new Couple(lagSeconds: 80, hidden.CrownOffsetKelvin, Quillmere.WorkingCelsius);
        Setpoint = new Setpoint(Quillmere.WorkingCelsius);
    }

    public Lining Lining { get; }
    public GlassPot Pot { get; }
    public Burner Burner { get; }
    public Couple Crown { get; }
    public Setpoint Setpoint { get; }
    public HeatLedger Ledger { get; } = new();

    bool IsBeingCharged => elapsedSeconds <= openUntilSeconds && openSquareMetres == ChargingSquareMetres;

    public double StoredKilojoules => Lining.StoredKilojoules + Pot.StoredKilojoules;

    public void SettleAt(double celsius, double roomCelsius, double glassKilograms)
    {
        Setpoint.JumpTo(celsius);
        Lining.SettleAt(celsius, roomCelsius);
        Pot.Fill(glassKilograms, celsius - 3);
        Crown.SettleAt(celsius + 4);
        control.Settle(0.14);
        Burner.SettleFiring();
    }

    /// <summary>Opens the gathering port, or the whole door for charging, for a while.</summary>
    public void Open(double seconds, bool forCharging)
    {
        if (IsBeingCharged) return;
        openUntilSeconds = Math.Max(openUntilSeconds, elapsedSeconds + seconds);
        openSquareMetres = forCharging ? ChargingSquareMetres : PortSquareMetres;
    }

    public void Step(double seconds, Surroundings around, in ApplianceFaults faults)
    {
        elapsedSeconds += seconds;
        Setpoint.Step(seconds);
        Ledger.WallKilojoules += Lining.Conduct(seconds, around.RoomCelsius);
        LoseThroughOpenings(seconds, around, faults.DoorIsOpen);
        Burner.Step(seconds, FireShare(seconds, faults), around, faults, MayFire(faults), Lining, Ledger);
        Lining.AddToHotFace(-Pot.Step(seconds, Lining.HotFaceCelsius, Ledger));

        // The couple looks at flame and walls; a flame adds a little to what the wall shows.
        var flameKelvin = Burner.HasFlame ? 4 + 10 * control.Output : 0;
        var draughtKelvin = IsBeingCharged ? ChargingDraughtKelvin : 0;
        Crown.Step(seconds, Lining.HotFaceCelsius + flameKelvin - draughtKelvin, faults.CoupleIsOpen, faults.HoursOfDrift);
    }

    double? FireShare(double seconds, in ApplianceFaults faults)
    {
        if (faults.IsStuckHigh) return 1;
        if (Crown.IsOpen) return null;      // upscale burn-out: the controller believes it is far too hot
        var error = Setpoint.Celsius - Crown.IndicatedCelsius;
        if (faults.IsCycling)
        {
            cycleIsOn = cycleIsOn ? error > -3 : error > 3;
            return cycleIsOn ? 0.5 : null;
        }

        if (IsBeingCharged) return 0;       // whoever stands at the open door turns the fire down (common practice)
        var share = control.Step(error, seconds);
        cycleIsOn = cycleIsOn ? error > -12 || share > 0 : error > 0;
        return cycleIsOn ? share : null;
    }

    bool MayFire(in ApplianceFaults faults)
    {
        isTripped = Lining.HotFaceCelsius > HighLimitCelsius || (isTripped && faults.IsStuckHigh);
        return !isTripped;
    }

    void LoseThroughOpenings(double seconds, Surroundings around, bool doorIsStuck)
    {
        var area = GapSquareMetres * lossFactor;
        if (doorIsStuck) area += PortSquareMetres;
        else if (elapsedSeconds <= openUntilSeconds) area += openSquareMetres;

        // Cold air that falls in and hot gas that rolls out: a third on top of the radiation (common practice).
        var kilojoules = 1.33 * OpenDoor.RadiatedKilowatts(area, Lining.HotFaceCelsius, emissivity: 0.9, viewFactor: 0.7, around.RoomCelsius) * seconds;
        Lining.AddToHotFace(-kilojoules);
        Ledger.OpeningKilojoules += kilojoules;
    }
}
