namespace HotShop.Physics.Pot;

/// <summary>What is believed of a studio before its first dip, and how much it may change. All relative standard deviations;
/// common practice.</summary>
public sealed record PotHabits
{
    public static PotHabits Usual { get; } = new();

    /// <summary>How far all of a studio's gathers may be off their nominal mass, together.</summary>
    public double GatherBias { get; init; } = 0.20;

    /// <summary>How far one size may be off on top of that.</summary>
    public double GatherBiasPerSize { get; init; } = 0.10;

    /// <summary>Scatter of a single gather.</summary>
    public double GatherScatter { get; init; } = 0.15;

    /// <summary>Gathers nobody logged, per logged gather: 0.09 is 8 % of all.</summary>
    public double MissedPerLogged { get; init; } = 0.09;

    /// <summary>Standard deviation of <see cref="MissedPerLogged"/>.</summary>
    public double MissedPerLoggedSpread { get; init; } = 0.09;

    /// <summary>How many forgotten gathers come in one go: people forget by the piece, not by the gather.</summary>
    public double MissedInOneGo { get; init; } = 3;

    /// <summary>Error common to all charges: scale and yield.</summary>
    public double ChargeBias { get; init; } = 0.03;

    /// <summary>Error of the melt's density and the pot's dimensions, common to all dips.</summary>
    public double DepthToMassBias { get; init; } = 0.015;

    /// <summary>Wander of the gather bias in a day.</summary>
    public double GatherBiasPerDay { get; init; } = 0.01;

    /// <summary>Wander of the missed gathers in a day.</summary>
    public double MissedPerDay { get; init; } = 0.02;

    /// <summary>How far what unlogged days take may be off what is expected of them, all of them together.</summary>
    public double UnloggedSpread { get; init; } = 0.5;

    /// <summary>Wander of that in a day.</summary>
    public double UnloggedPerDay { get; init; } = 0.03;

    /// <summary>A dip further than this many standard deviations from the log means that something was not logged; the dip is
    /// believed, and the habits are left alone.</summary>
    public double SurprisingDeviations { get; init; } = 3.5;
}
