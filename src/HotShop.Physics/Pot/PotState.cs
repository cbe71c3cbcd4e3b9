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

    /// <summary>The same, with what the melt's density and the pot's dimensions are in doubt for.</summary>
    public Estimate Full => Estimate.Relative(FullKilograms, filter.DepthToMassBias);

    /// <summary>Depth of glass, m.</summary>
    public double LevelMetres => Pot.DepthMetres(MassKilograms);

    /// <summary>Lower end of the 95 % interval of the depth, m.</summary>
    public double LevelMetresLow95 => Pot.DepthMetres(MassKilogramsLow95);

    /// <summary>Upper end of the 95 % interval of the depth, m.</summary>
    public double LevelMetresHigh95 => Pot.DepthMetres(MassKilogramsHigh95);

    /// <summary>From the glass to the rim, m.</summary>
    public double FreeboardMetres => Pot.FreeboardMetres(MassKilograms);

    /// <summary>Lower end of the 95 % interval of the freeboard, m: the glass stands at its highest.</summary>
    public double FreeboardMetresLow95 => Pot.FreeboardMetres(MassKilogramsHigh95);

    /// <summary>Upper end of the 95 % interval of the freeboard, m.</summary>
    public double FreeboardMetresHigh95 => Pot.FreeboardMetres(MassKilogramsLow95);

    /// <summary>The last dip taken into account; <see langword="null"/> when there was none.</summary>
    public Instant? LastDipAt => filter.LastDipAt;

    /// <summary>What that dip found beyond the log's own doubt, kg (negative: less glass than logged): an entry is missing. 0
    /// when it agreed.</summary>
    public double UnexplainedKilograms => Unexplained.Value;

    /// <summary>The same, with what log and dip together were in doubt for; exactly 0 when they agreed.</summary>
    public Estimate Unexplained => filter.Unexplained;

    /// <summary>What a gather of this studio weighs over its nominal mass, all sizes together.</summary>
    public Estimate GatherFactor => filter.GatherFactor;

    /// <summary>Share of all gathers that nobody logged, 0 to 1.</summary>
    public double MissedShare => MissedGathers.Value;

    /// <summary>The same with its standard uncertainty.</summary>
    public Estimate MissedGathers
    {
        get
        {
            var all = 1 + filter.MissedPerLogged.Value;
            return new(filter.MissedPerLogged.Value / all, filter.MissedPerLogged.StandardUncertainty / (all * all));
        }
    }

    /// <summary>Glass that logged gathers really took, kg: each as heavy as this studio's are, and those that nobody logged with them.</summary>
    /// <param name="nominalKilograms">Nominal mass of the gathers logged by size, all together, kg.</param>
    /// <param name="weighedKilograms">Mass of those that were weighed, kg.</param>
    public Estimate Taken(double nominalKilograms, double weighedKilograms) =>
        (GatherFactor * Estimate.Exact(Require.NotNegative(nominalKilograms)) + Estimate.Exact(Require.NotNegative(weighedKilograms)))
        * (Estimate.Exact(1) + filter.MissedPerLogged);

    /// <summary>Glass above the heel, kg, 0 or above: what can be gathered.</summary>
    /// <param name="heelKilograms">Glass at the bottom that cannot, kg.</param>
    public Estimate Workable(double heelKilograms) => new(Math.Max(0, MassKilograms - Require.NotNegative(heelKilograms)), filter.Mass.StandardUncertainty);

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
