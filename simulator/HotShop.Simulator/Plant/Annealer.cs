namespace HotShop.Simulator.Plant;

/// <summary>What the plate and the seed say about one annealer.</summary>
internal sealed record AnnealerBuild(double FullKilowatts, double LossFactor, double CoupleOffsetKelvin, bool IsSwitched);

/// <summary>An electric annealer: fibre lining, ware, element behind a relay (switched) or a power controller, door.</summary>
internal sealed class Annealer
{
    const double CycleSeconds = 40, HighLimitCelsius = 650, ShareLeftWithoutElements = 0.25, DoorWattsPerKelvin = 13;

    readonly AnnealerBuild build;
    readonly GlassEnthalpy glass;
    readonly FireControl control = new(bandKelvin: 30, integralSeconds: 600);
    double openUntilSeconds, elapsedSeconds, wareKilojoules, inCycleSeconds, programmeStartSeconds;
    AnnealingProgramme? programme;
    Setpoint? holding;
    bool isTripped;

    public Annealer(AnnealerBuild build, GlassEnthalpy glass)
    {
        (this.build, this.glass) = (build, glass);
        Lining = new Lining([24, 15], [9 * build.LossFactor, 14 * build.LossFactor]);
        Chamber = new Couple(lagSeconds: 20, build.CoupleOffsetKelvin, 25);
    }

    public Lining Lining { get; }
    public Couple Chamber { get; }
    public HeatLedger Ledger { get; } = new();
    public double WareKilograms { get; private set; }
    public double WareCelsius => WareKilograms > 0 ? glass.Celsius(wareKilojoules / WareKilograms) : Lining.HotFaceCelsius;
    public bool RelayIsOn { get; private set; }
    public double Kilowatts { get; private set; }
    public bool DoorIsOpen { get; private set; }
    public double StoredKilojoules => Lining.StoredKilojoules + wareKilojoules;

    /// <summary>What the controller aims at, in °C; <see langword="null"/> while it is off: a finished programme has no setpoint.</summary>
    public double? SetpointCelsius => programme is not null ? programme.SetpointAfter((elapsedSeconds - programmeStartSeconds) / 3600) : holding?.Celsius;

    public bool IsRunningProgramme => programme is not null && SetpointCelsius is not null;

    public void SettleAt(double celsius, double roomCelsius)
    {
        Lining.SettleAt(celsius, roomCelsius);
        Chamber.SettleAt(celsius);
        control.Settle(Math.Clamp((celsius - roomCelsius) * 0.0055 / build.FullKilowatts, 0, 1));
    }

    public void HeatTo(double celsius, double kelvinPerHour)
    {
        programme = null;
        holding = new Setpoint(Chamber.IndicatedCelsius);
        holding.LeadTo(celsius, kelvinPerHour);
    }

    public void HoldAt(double celsius) => (programme, holding) = (null, new Setpoint(celsius));

    /// <summary>Starts a programme, or resumes one that began before the simulation did.</summary>
    public void Run(AnnealingProgramme next, double hoursAgo) =>
        (programme, programmeStartSeconds) = (next, elapsedSeconds - hoursAgo * 3600);

    public void TurnOff() => (programme, holding) = (null, null);

    public void Open(double seconds) => openUntilSeconds = Math.Max(openUntilSeconds, elapsedSeconds + seconds);

    public void PutIn(double kilograms, double celsius)
    {
        var heat = kilograms * glass.KilojoulesPerKilogram(celsius);
        WareKilograms += kilograms;
        wareKilojoules += heat;
        Ledger.GlassInKilojoules += heat;
    }

    public void TakeAllOut()
    {
        Ledger.GlassOutKilojoules += wareKilojoules;
        (WareKilograms, wareKilojoules) = (0, 0);
    }

    public void Step(double seconds, Surroundings around, in ApplianceFaults faults)
    {
        elapsedSeconds += seconds;
        DoorIsOpen = faults.DoorIsOpen || elapsedSeconds <= openUntilSeconds;
        holding?.Step(seconds);
        Ledger.WallKilojoules += Lining.Conduct(seconds, around.RoomCelsius);
        if (DoorIsOpen)
        {
            var lost = DoorWattsPerKelvin / 1000 * (Lining.HotFaceCelsius - around.RoomCelsius) * seconds;
            Lining.AddToHotFace(-lost);
            Ledger.OpeningKilojoules += lost;
        }

        if (WareKilograms > 0)
        {
            // Radiation and still air, about 20 W/(m²·K) on thin ware: it follows within a quarter of an hour.
            var toWare = 0.0013 * WareKilograms * (Lining.HotFaceCelsius - WareCelsius) * seconds;
            wareKilojoules += toWare;
            Lining.AddToHotFace(-toWare);
        }

        Heat(seconds, around, faults);
        Chamber.Step(seconds, Lining.HotFaceCelsius, faults.CoupleIsOpen, faults.HoursOfDrift);
    }

    void Heat(double seconds, Surroundings around, in ApplianceFaults faults)
    {
        isTripped = Lining.HotFaceCelsius > HighLimitCelsius || (isTripped && faults.IsStuckHigh);
        var share = faults.IsStuckHigh ? 1
            : SetpointCelsius is { } setpoint && !Chamber.IsOpen ? control.Step(setpoint - Chamber.IndicatedCelsius, seconds)
            : 0;
        if (!around.HasMains || isTripped) share = 0;
        inCycleSeconds += seconds;
        if (inCycleSeconds >= CycleSeconds) inCycleSeconds -= CycleSeconds;
        RelayIsOn = build.IsSwitched ? inCycleSeconds < share * CycleSeconds : share > 0;
        Kilowatts = build.FullKilowatts * (build.IsSwitched ? (RelayIsOn ? 1 : 0) : share) * (faults.ElementsFailed ? ShareLeftWithoutElements : 1);
        Lining.AddToHotFace(Kilowatts * seconds);
        Ledger.ElectricKilojoules += Kilowatts * seconds;
    }
}
