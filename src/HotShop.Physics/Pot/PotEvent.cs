using NodaTime;

namespace HotShop.Physics.Pot;

/// <summary>Something the log says about the glass in a pot.</summary>
/// <param name="At">When it happened; for a span, its end.</param>
public abstract record PotEvent(Instant At)
{
    /// <summary>Glass added, kg after yield; see <see cref="ChargeMaterial.GlassKilograms"/>.</summary>
    /// <param name="RelativeUncertainty">Standard uncertainty of this one charge as a share of it.</param>
    public sealed record Charge(Instant At, double GlassKilograms, double RelativeUncertainty = 0.03) : PotEvent(At)
    {
        public double GlassKilograms { get; } = Require.NotNegative(GlassKilograms);

        public double RelativeUncertainty { get; } = Require.NotNegative(RelativeUncertainty);
    }

    /// <summary>Gathers of one size. What they really weigh is learnt from dips.</summary>
    /// <param name="NominalKilograms">Mass of one gather of this size as configured.</param>
    public sealed record Gather(Instant At, double NominalKilograms, int Count, string Size) : PotEvent(At)
    {
        public double NominalKilograms { get; } = Require.Positive(NominalKilograms);

        public int Count { get; } = Count >= 0
            ? Count
            : throw new ArgumentOutOfRangeException(nameof(Count), Count, "expected 0 or more gathers");

        public string Size { get; } = Size ?? throw new ArgumentNullException(nameof(Size));
    }

    /// <summary>A gather whose piece was put on a scale.</summary>
    public sealed record WeighedGather(Instant At, double Kilograms, double RelativeUncertainty = 0.05) : PotEvent(At)
    {
        public double Kilograms { get; } = Require.NotNegative(Kilograms);

        public double RelativeUncertainty { get; } = Require.NotNegative(RelativeUncertainty);
    }

    /// <summary>All gathers of a span counted afterwards: it replaces the single gathers logged in the span, and none of it is
    /// taken as forgotten.</summary>
    public sealed record Tally(Instant From, Instant To, IReadOnlyList<SizeCount> Counts) : PotEvent(To)
    {
        public Instant From { get; } = From <= To
            ? From
            : throw new ArgumentOutOfRangeException(nameof(From), From, "a tally ends before it begins");

        public IReadOnlyList<SizeCount> Counts { get; } = Counts ?? throw new ArgumentNullException(nameof(Counts));
    }

    /// <summary>Work that nobody logged: what it took, as well as can be said.</summary>
    public sealed record UnloggedSpan(
        Instant From, Instant To, double ExpectedKilograms, double StandardUncertaintyKilograms) : PotEvent(To)
    {
        public double ExpectedKilograms { get; } = Require.NotNegative(ExpectedKilograms);

        public double StandardUncertaintyKilograms { get; } = Require.NotNegative(StandardUncertaintyKilograms);
    }

    /// <summary>Glass taken out other than by gathering.</summary>
    public sealed record LadleOut(Instant At, double Kilograms, double RelativeUncertainty = 0.1) : PotEvent(At)
    {
        public double Kilograms { get; } = Require.NotNegative(Kilograms);

        public double RelativeUncertainty { get; } = Require.NotNegative(RelativeUncertainty);
    }

    /// <summary>Clean glass put back.</summary>
    public sealed record ReturnedGlass(Instant At, double Kilograms, double RelativeUncertainty = 0.1) : PotEvent(At)
    {
        public double Kilograms { get; } = Require.NotNegative(Kilograms);

        public double RelativeUncertainty { get; } = Require.NotNegative(RelativeUncertainty);
    }

    /// <summary>Depth of glass measured with a rod, m.</summary>
    /// <param name="UncertaintyMetres">Standard uncertainty; 5 mm is common practice.</param>
    public sealed record Dip(Instant At, double DepthMetres, double UncertaintyMetres = 0.005) : PotEvent(At)
    {
        public double DepthMetres { get; } = Require.NotNegative(DepthMetres);

        public double UncertaintyMetres { get; } = Require.Positive(UncertaintyMetres);
    }

    /// <summary>An empty pot in place of the old one; the studio's habits stay.</summary>
    /// <param name="NewPot">Its geometry where it differs.</param>
    public sealed record PotChanged(Instant At, GlassMass? NewPot = null) : PotEvent(At);
}

/// <summary>A number of gathers of one size.</summary>
public sealed record SizeCount(string Size, double NominalKilograms, int Count);
