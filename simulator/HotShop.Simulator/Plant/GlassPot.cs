using HotShop.Physics.Pot;

namespace HotShop.Simulator.Plant;

/// <summary>The pot: clean melt, the cold heap on it, and a ledger of every kilogram.</summary>
internal sealed class GlassPot(GlassEnthalpy glass, double meltKilogramsPerCubicMetre)
{
    static readonly CrucibleGeometry Inside = new CylinderPot(Quillmere.PotRadiusMetres, Quillmere.PotHeightMetres);

    double meltKilojoules;

    public ColdHeap Heap { get; } = new(glass);

    public double MeltKilograms { get; private set; }

    /// <summary>Glass in the pot, molten or still to melt, without the gas of batch, in kg.</summary>
    public double GlassKilograms => MeltKilograms + Heap.GlassKilograms;

    public double Celsius => glass.Celsius(meltKilojoules / MeltKilograms);

    public double StoredKilojoules => meltKilojoules + Heap.StoredKilojoules;

    public double DepthMetres => Inside.DepthMetres(MeltKilograms / meltKilogramsPerCubicMetre);

    public double ChargedKilograms { get; private set; }

    public double TakenKilograms { get; private set; }

    public double GasKilograms { get; private set; }

    /// <summary>Glass that has melted flat from charges since the start, in kg.</summary>
    public double MeltedKilograms { get; private set; }

    public void Fill(double kilograms, double celsius) => (MeltKilograms, meltKilojoules) = (kilograms, kilograms * glass.KilojoulesPerKilogram(celsius));

    public void Charge(double culletKilograms, double batchKilograms, double celsius, HeatLedger ledger)
    {
        Heap.Add(culletKilograms, batchKilograms, celsius, ledger);
        ChargedKilograms += culletKilograms + batchKilograms;
    }

    public void Take(double kilograms, HeatLedger ledger)
    {
        var heat = meltKilojoules * kilograms / MeltKilograms;
        meltKilojoules -= heat;
        MeltKilograms -= kilograms;
        TakenKilograms += kilograms;
        ledger.GlassOutKilojoules += heat;
    }

    /// <summary>Exchanges heat with the hot face and within.</summary>
    /// <returns>Taken from the hot face, in kJ; negative when the glass warms it.</returns>
    public double Step(double seconds, double hotFaceCelsius, HeatLedger ledger)
    {
        // Radiation onto the surface and through the pot's wall: about 150 W/K at 1150 °C, less when the heap shades the surface.
        var toMelt = (Heap.IsEmpty ? 0.15 : 0.11) * (hotFaceCelsius - Celsius) * seconds;
        meltKilojoules += toMelt;
        if (Heap.IsEmpty) return toMelt;

        // 10 kg melt flat in about three quarters of an hour (common practice 45 to 90 min).
        var size = Math.Pow(Heap.GlassKilograms / 10, 2.0 / 3);
        var heapCelsius = Heap.Celsius;
        var fromAbove = 0.006 * size * (hotFaceCelsius - heapCelsius) * seconds;
        var fromBelow = 0.005 * size * (Celsius - heapCelsius) * seconds;
        meltKilojoules -= fromBelow;
        GasKilograms += Heap.Absorb(fromAbove + fromBelow, ledger);
        if (Heap.HasMelted(Celsius))
        {
            var (kilograms, kilojoules) = Heap.Melt();
            MeltKilograms += kilograms;
            meltKilojoules += kilojoules;
            MeltedKilograms += kilograms;
        }

        return toMelt + fromAbove;
    }
}
