namespace HotShop.Simulator.Plant;

/// <summary>What a burner is and burns.</summary>
internal sealed record BurnerBuild(double LowFireKilowatts, double HighFireKilowatts, double KilowattHoursPerCubicMetre, double ExcessAirFraction)
{
    public AvailableHeat Available { get; } = new(ExcessAirFraction);

    /// <summary>Air and gas at base conditions for each m³ of gas (methane: 9.548 m³ of air).</summary>
    public double MixtureCubicMetresPerCubicMetre => 1 + 9.548 * (1 + ExcessAirFraction);
}

/// <summary>A burner with fan, flame safeguard and two shut-off valves: purge, fire, lock out, wait for a person.</summary>
internal sealed class Burner(BurnerBuild build)
{
    const double PurgeSeconds = 30, PersonComesAfterSeconds = 240, MixtureKilojoulesPerCubicMetreKelvin = 1.3, StirredShare = 0.5;

    enum Phase { Off, Purging, Firing, LockedOut, WaitingForPerson }

    Phase phase;
    double phaseSeconds;

    public bool CallsForHeat { get; private set; }

    public bool HasFlame { get; private set; }

    public bool IsLockedOut => phase == Phase.LockedOut;

    /// <summary>At base conditions, burnt or not.</summary>
    public double GasCubicMetresPerHour { get; private set; }

    public double BurntKilowatts => HasFlame ? GasCubicMetresPerHour * build.KilowattHoursPerCubicMetre : 0;

    /// <summary>Unburnt gas that leaves into flue and room, in m³/h.</summary>
    public double UnburntCubicMetresPerHour => HasFlame ? 0 : GasCubicMetresPerHour;

    public void SettleFiring() => phase = Phase.Firing;

    /// <summary>Moves the safeguard and gives or takes the chamber's heat.</summary>
    /// <param name="fireShare">0 low to 1 high; <see langword="null"/> when no heat is called for.</param>
    /// <param name="mayFire">False trips the burner: the high limit.</param>
    public void Step(double seconds, double? fireShare, Surroundings around, in ApplianceFaults faults, bool mayFire, Lining lining, HeatLedger ledger)
    {
        CallsForHeat = fireShare is not null && around.HasMains;
        phaseSeconds += seconds;
        Next(around, faults.FlameFails, mayFire);
        HasFlame = phase == Phase.Firing && around.HasGas && !faults.FlameFails;
        var kilowatts = build.LowFireKilowatts + (fireShare ?? 0) * (build.HighFireKilowatts - build.LowFireKilowatts);
        GasCubicMetresPerHour = phase == Phase.Firing && around.HasGas ? kilowatts / build.KilowattHoursPerCubicMetre : 0;
        Heat(seconds, around.RoomCelsius, lining, ledger);
    }

    void Next(Surroundings around, bool flameFails, bool mayFire)
    {
        if (!around.HasMains)
        {
            Enter(Phase.WaitingForPerson);
            phaseSeconds = 0;
            return;
        }

        switch (phase)
        {
            case Phase.Off when CallsForHeat: Enter(Phase.Purging); break;
            case Phase.Purging when !CallsForHeat: Enter(Phase.Off); break;
            case Phase.Purging when phaseSeconds >= PurgeSeconds: Enter(around.HasGas && mayFire ? Phase.Firing : Phase.LockedOut); break;
            case Phase.Firing when !around.HasGas || !mayFire: Enter(Phase.LockedOut); break;
            case Phase.Firing when flameFails: break;       // the safeguard itself has failed: the valves stay open
            case Phase.Firing when !CallsForHeat: Enter(Phase.Off); break;
            case Phase.Firing when !HasFlame && phaseSeconds > PurgeSeconds: Enter(Phase.Purging); break;
            case Phase.LockedOut when !around.HasGas || !mayFire: phaseSeconds = 0; break;
            case Phase.LockedOut or Phase.WaitingForPerson when phaseSeconds >= PersonComesAfterSeconds: Enter(Phase.Off); break;
        }
    }

    void Enter(Phase next)
    {
        if (phase != next) phaseSeconds = 0;
        phase = next;
    }

    void Heat(double seconds, double roomCelsius, Lining lining, HeatLedger ledger)
    {
        var fuel = GasCubicMetresPerHour * build.KilowattHoursPerCubicMetre * seconds;
        ledger.FuelKilojoules += fuel;
        var kept = 0.0;
        if (HasFlame)
        {
            // Flue gas leaves a little hotter than the walls it has heated.
            kept = fuel * build.Available.FractionOfGross(lining.HotFaceCelsius + 45);
        }
        else if (phase is Phase.Firing or Phase.Purging && (GasCubicMetresPerHour > 0 || phase == Phase.Purging))
        {
            var gas = phase == Phase.Purging ? 0.4 * build.HighFireKilowatts / build.KilowattHoursPerCubicMetre : GasCubicMetresPerHour;
            kept = -gas * build.MixtureCubicMetresPerCubicMetre / 3600 * MixtureKilojoulesPerCubicMetreKelvin * StirredShare
                * (lining.HotFaceCelsius - roomCelsius) * seconds;
        }

        lining.AddToHotFace(kept);
        ledger.FlueKilojoules += fuel - kept;
    }
}
