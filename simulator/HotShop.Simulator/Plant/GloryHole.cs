using HotShop.Physics.Radiation;
using HotShop.Simulator.Chance;

namespace HotShop.Simulator.Plant;

/// <summary>
/// The glory hole: a round opening of 0.35 m with doors, two layers of lining, a hard burner; lit in the morning, off at night.
/// </summary>
internal sealed class GloryHole
{
    const double OpeningSquareMetres = 0.0962, ShareOpenWithDoorsClosed = 0.32, HighLimitCelsius = 1330, WorkKilowatts = 0.9;

    readonly FireControl control = new(bandKelvin: 60, integralSeconds: 400);
    double openUntilSeconds, elapsedSeconds, litSeconds;
    bool cycleIsOn = true, isTripped;

    public GloryHole(HiddenParameters hidden)
    {
        Lining = new Lining([70, 90], [8 * hidden.GloryHoleLossFactor, 6 * hidden.GloryHoleLossFactor]);
        Burner = new Burner(new BurnerBuild(12, 85, hidden.CalorificMegajoulesPerCubicMetre / 3.6, hidden.GloryHoleExcessAirFraction));
        Chamber = new Couple(lagSeconds: 60, hidden.GloryHoleOffsetKelvin, 60);
    }

    public Lining Lining { get; }
    public Burner Burner { get; }
    public Couple Chamber { get; }
    public HeatLedger Ledger { get; } = new();

    /// <summary>Lit by hand; off until then.</summary>
    public bool IsLit { get; private set; }

    public bool DoorIsOpen { get; private set; }

    public double StoredKilojoules => Lining.StoredKilojoules;

    public void SettleAt(double celsius, double roomCelsius)
    {
        Lining.SettleAt(celsius, roomCelsius);
        Chamber.SettleAt(celsius);
        if (!IsLit) return;
        litSeconds = 7200;
        control.Settle(0.4);
        Burner.SettleFiring();
    }

    public void Light(bool isLit) => (IsLit, litSeconds) = (isLit, 0);

    public void Open(double seconds) => openUntilSeconds = Math.Max(openUntilSeconds, elapsedSeconds + seconds);

    public void Step(double seconds, Surroundings around, in ApplianceFaults faults)
    {
        elapsedSeconds += seconds;
        litSeconds += seconds;
        DoorIsOpen = faults.DoorIsOpen || elapsedSeconds <= openUntilSeconds;
        Ledger.WallKilojoules += Lining.Conduct(seconds, around.RoomCelsius);
        LoseThroughOpening(seconds, around);
        Burner.Step(seconds, FireShare(seconds, faults), around, faults, MayFire(faults), Lining, Ledger);
        Chamber.Step(seconds, Lining.HotFaceCelsius + (Burner.HasFlame ? 8 : 0), faults.CoupleIsOpen, faults.HoursOfDrift);
    }

    double? FireShare(double seconds, in ApplianceFaults faults)
    {
        if (faults.IsStuckHigh) return 1;
        if (!IsLit || Chamber.IsOpen) return null;
        var error = Quillmere.GloryHoleCelsius - Chamber.IndicatedCelsius;
        if (faults.IsCycling)
        {
            cycleIsOn = cycleIsOn ? error > -10 : error > 10;
            return cycleIsOn ? 0.8 : null;
        }

        // Half fire for the first 20 minutes spares the lining.
        var share = control.Step(error, seconds);
        return litSeconds < 1200 ? Math.Min(share, 0.5) : share;
    }

    bool MayFire(in ApplianceFaults faults)
    {
        isTripped = Lining.HotFaceCelsius > HighLimitCelsius || (isTripped && faults.IsStuckHigh);
        return !isTripped;
    }

    void LoseThroughOpening(double seconds, Surroundings around)
    {
        var area = OpeningSquareMetres * (DoorIsOpen ? 1 : ShareOpenWithDoorsClosed);
        var radiated = OpenDoor.RadiatedKilowatts(area, Lining.HotFaceCelsius, emissivity: 0.9, viewFactor: 1, around.RoomCelsius) * seconds;
        var work = IsLit && Lining.HotFaceCelsius > 1000 ? WorkKilowatts * seconds : 0;
        Lining.AddToHotFace(-radiated - work);
        Ledger.OpeningKilojoules += radiated;
        Ledger.WorkKilojoules += work;
    }
}
