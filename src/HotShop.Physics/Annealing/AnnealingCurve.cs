using NodaTime;

namespace HotShop.Physics.Annealing;

/// <summary>The intended temperature of an annealer over time. Immutable.</summary>
public sealed class AnnealingCurve
{
    readonly Piece[] pieces;

    /// <param name="startsAt">When the first stage begins.</param>
    /// <param name="startCelsius">Temperature at that moment, °C.</param>
    /// <param name="stages">In order; none may be missing.</param>
    public AnnealingCurve(Instant startsAt, double startCelsius, IReadOnlyList<Stage> stages)
    {
        ArgumentNullException.ThrowIfNull(stages);
        (StartsAt, StartCelsius, Stages) = (startsAt, Require.Celsius(startCelsius), stages);
        pieces = new Piece[stages.Count];
        var (at, celsius) = (startsAt, startCelsius);
        for (var i = 0; i < stages.Count; i++)
        {
            pieces[i] = Piece.Of(stages[i], at, celsius);
            (at, celsius) = (pieces[i].EndsAt, pieces[i].EndCelsius);
        }
        (EndsAt, EndCelsius) = (at, celsius);
    }

    public Instant StartsAt { get; }

    /// <summary>°C at the start.</summary>
    public double StartCelsius { get; }

    public IReadOnlyList<Stage> Stages { get; }

    /// <summary>When the last stage is done.</summary>
    public Instant EndsAt { get; }

    /// <summary>°C at the end.</summary>
    public double EndCelsius { get; }

    /// <summary>Where the curve begins and where each of its stages ends.</summary>
    public IReadOnlyList<CurveCorner> Corners => [new(StartsAt, StartCelsius), .. pieces.Select(p => new CurveCorner(p.EndsAt, p.EndCelsius))];

    /// <summary>Intended temperature, °C; <see langword="null"/> before the start and after the end.</summary>
    public double? SetpointCelsius(Instant at)
    {
        if (at < StartsAt || at > EndsAt) return null;
        foreach (var piece in pieces)
            if (at <= piece.EndsAt) return piece.CelsiusAt(at);
        return EndCelsius;
    }

    /// <summary>Index of the stage under way; <see langword="null"/> before the start and after the end.</summary>
    public int? StageAt(Instant at)
    {
        if (at < StartsAt || at > EndsAt) return null;
        for (var i = 0; i < pieces.Length; i++)
            if (at < pieces[i].EndsAt) return i;
        return pieces.Length > 0 ? pieces.Length - 1 : null;
    }

    /// <summary>Measured minus intended, K; <see langword="null"/> before the start and after the end.</summary>
    public double? DeviationCelsius(Instant at, double measuredCelsius) => measuredCelsius - SetpointCelsius(at);

    readonly record struct Piece(Instant StartsAt, Instant EndsAt, double StartCelsius, double EndCelsius)
    {
        public static Piece Of(Stage stage, Instant at, double celsius) => stage switch
        {
            Stage.Ramp ramp => new(at, at + TimeOf(ramp, celsius), celsius, ramp.TargetCelsius),
            Stage.Hold hold => new(at, at + hold.For, celsius, celsius),
            _ => throw new ArgumentException("a stage is missing", nameof(stage)),
        };

        static Duration TimeOf(Stage.Ramp ramp, double fromCelsius) =>
            Duration.FromHours(Math.Abs(ramp.TargetCelsius - fromCelsius) / ramp.KelvinPerHour);

        public double CelsiusAt(Instant at) =>
            EndsAt == StartsAt ? EndCelsius : StartCelsius + (EndCelsius - StartCelsius) * ((at - StartsAt) / (EndsAt - StartsAt));
    }
}

/// <summary>A moment and the temperature intended for it, °C.</summary>
public readonly record struct CurveCorner(Instant At, double Celsius);
