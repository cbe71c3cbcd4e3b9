namespace HotShop.Simulator.Plant;

/// <summary>What was charged and has not melted flat yet: cullet, and batch that gives off its carbon dioxide while it heats.</summary>
internal sealed class ColdHeap(GlassEnthalpy glass)
{
    const double GasLeavesFromCelsius = 500, GasHasLeftAtCelsius = 950, MeltsWithinKelvin = 120;

    /// <summary>Heat of the batch's reactions, kJ per kg of glass (EU reference document on glass manufacture, from memory).</summary>
    const double ReactionKilojoulesPerKilogram = 490;

    double kilojoules, reactedShare;

    public double CulletKilograms { get; private set; }

    /// <summary>Batch as it was weighed.</summary>
    public double BatchKilograms { get; private set; }

    public double GlassKilograms => CulletKilograms + Quillmere.BatchYield * BatchKilograms;

    public double BoundGasKilograms => (1 - Quillmere.BatchYield) * BatchKilograms * (1 - reactedShare);

    public bool IsEmpty => GlassKilograms == 0;

    public double StoredKilojoules => kilojoules;

    public double Celsius => IsEmpty ? 0 : glass.Celsius(kilojoules, GlassKilograms, BoundGasKilograms);

    public bool HasMelted(double meltCelsius) => !IsEmpty && Celsius >= Math.Max(GasHasLeftAtCelsius, meltCelsius - MeltsWithinKelvin);

    public void Add(double culletKilograms, double batchKilograms, double celsius, HeatLedger ledger)
    {
        var newGlass = culletKilograms + Quillmere.BatchYield * batchKilograms;
        var heat = newGlass * glass.KilojoulesPerKilogram(celsius)
            + (1 - Quillmere.BatchYield) * batchKilograms * GlassEnthalpy.GasKilojoulesPerKilogramKelvin * celsius;
        kilojoules += heat;
        ledger.GlassInKilojoules += heat;
        reactedShare = BatchKilograms + batchKilograms > 0 ? reactedShare * BatchKilograms / (BatchKilograms + batchKilograms) : 0;
        CulletKilograms += culletKilograms;
        BatchKilograms += batchKilograms;
    }

    /// <summary>Takes heat up, lets gas go and reactions run.</summary>
    /// <returns>Carbon dioxide that left, in kg.</returns>
    public double Absorb(double heatKilojoules, HeatLedger ledger)
    {
        kilojoules += heatKilojoules;
        if (BatchKilograms == 0) return 0;
        var celsius = Celsius;
        var share = Math.Max(reactedShare, Math.Clamp((celsius - GasLeavesFromCelsius) / (GasHasLeftAtCelsius - GasLeavesFromCelsius), 0, 1));
        var step = share - reactedShare;
        if (step <= 0) return 0;
        var gasKilograms = (1 - Quillmere.BatchYield) * BatchKilograms * step;
        var gasHeat = gasKilograms * GlassEnthalpy.GasKilojoulesPerKilogramKelvin * celsius;
        var reaction = ReactionKilojoulesPerKilogram * Quillmere.BatchYield * BatchKilograms * step;
        reactedShare = share;
        kilojoules -= gasHeat + reaction;
        ledger.GasesKilojoules += gasHeat;
        ledger.ReactionKilojoules += reaction;
        return gasKilograms;
    }

    /// <summary>Empties the heap into the melt.</summary>
    public (double GlassKilograms, double Kilojoules) Melt()
    {
        var melted = (GlassKilograms, kilojoules);
        (CulletKilograms, BatchKilograms, kilojoules, reactedShare) = (0, 0, 0, 0);
        return melted;
    }
}
