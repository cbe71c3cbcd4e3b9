using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Physics.Pot;

/// <summary>What is in the pot at a moment, with 95 % intervals; never below empty nor above full. Immutable.</summary>
public sealed class PotState
{
    readonly PotFilter filter;

    /// <param name="filter">Handed over: nobody feeds it any more.</param>
    internal PotState(Instant at, PotFilter filter)
    {
        (At, this.filter, Pot) = (at, filter, filter.Pot);
        (MassKilograms, MassKilogramsLow95, MassKilogramsHigh95) =
            (Inside(filter.Mass.Value), Inside(filter.Mass.Low95), Inside(filter.Mass.High95));
    }

    public Instant At { get; }

    /// <summary>Inside of the pot in place at that moment.</summary>
    public GlassMass Pot { get; }

    /// <summary>Best estimate, kg.</summary>
    public double MassKilograms { get; }

    /// <summary>Lower end of the 95 % interval, kg.</summary>
    public double MassKilogramsLow95 { get; }

    /// <summary>Upper end of the 95 % interval, kg.</summary>
    public double MassKilogramsHigh95 { get; }

    /// <summary>Half of the 95 % interval of the mass, kg.</summary>
    public double HalfWidthKilograms => (MassKilogramsHigh95 - MassKilogramsLow95) / 2;

    /// <summary>What the pot holds up to the rim, kg.</summary>
    public double FullKilograms => Pot.FullKilograms;

    /// <summary>Depth of glass, m.</summary>
    public double LevelMetres => Pot.DepthMetres(MassKilograms);

    /// <summary>Lower end of the 95 % interval of the depth, m.</summary>
    public double LevelMetresLow95 => Pot.DepthMetres(MassKilogramsLow95);

    /// <summary>Upper end of the 95 % interval of the depth, m.</summary>
    public double LevelMetresHigh95 => Pot.DepthMetres(MassKilogramsHigh95);

    /// <summary>From the glass to the rim, m.</summary>
    public double FreeboardMetres => Pot.FreeboardMetres(MassKilograms);

    /// <summary>The last dip taken into account; <see langword="null"/> when there was none.</summary>
    public Instant? LastDipAt => filter.LastDipAt;

    /// <summary>What that dip found beyond the log's own doubt, kg (negative: less glass than logged): an entry is missing. 0
    /// when it agreed.</summary>
    public double UnexplainedKilograms => filter.UnexplainedKilograms;

    /// <summary>What a gather of this studio weighs over its nominal mass, all sizes together.</summary>
    public Estimate GatherFactor => filter.GatherFactor;

    /// <summary>Share of all gathers that nobody logged, 0 to 1.</summary>
    public double MissedShare => filter.MissedShare;

    /// <summary>Gathers of a size that can still be taken, with its standard uncertainty; 0 when the glass stands at the
    /// heel.</summary>
    /// <param name="size">Size as logged; one never logged yet is taken as the studio's usual.</param>
    /// <param name="nominalKilograms">Its nominal mass, kg.</param>
    /// <param name="heelKilograms">Glass at the bottom that cannot be gathered, kg.</param>
    public Estimate GathersLeft(string size, double nominalKilograms, double heelKilograms = 0)
    {
        ArgumentNullException.ThrowIfNull(size);
        return filter.GathersLeft(size, Require.Positive(nominalKilograms), Require.NotNegative(heelKilograms));
    }

    double Inside(double kilograms) => Math.Clamp(kilograms, 0, FullKilograms);
}
