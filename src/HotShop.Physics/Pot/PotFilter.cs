using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Physics.Pot;

/// <summary>Kalman filter over the mass of glass and the studio's habits, fed in order of time.</summary>
/// <remarks>
/// A logged gather takes n · nominal · exp(bias + bias of its size) · (1 + missed per logged). Forgotten gathers, heavy hands and
/// a wrong scale look alike in one dip; the covariance keeps them apart as far as the log allows and no further.
/// </remarks>
internal sealed class PotFilter
{
    const int Glass = 0, Bias = 1, Missed = 2, ChargeBias = 3, DepthBias = 4, Unlogged = 5, FirstSize = 6;

    readonly PotHabits habits;
    readonly Belief belief;
    readonly Dictionary<string, int> sizes;
    Instant? last;

    public PotFilter(GlassMass pot, PotHabits habits, Estimate? startKilograms)
    {
        (Pot, this.habits, belief, sizes) = (pot, habits, new(FirstSize), []);
        // Nothing known: anything from empty to full is alike.
        var start = startKilograms ?? new Estimate(pot.FullKilograms / 2, pot.FullKilograms / Math.Sqrt(12));
        belief.Reset(Glass, start.Value, start.StandardUncertainty);
        belief.Reset(Bias, 0, habits.GatherBias);
        belief.Reset(Missed, habits.MissedPerLogged, habits.MissedPerLoggedSpread);
        belief.Reset(ChargeBias, 0, habits.ChargeBias);
        belief.Reset(DepthBias, 0, habits.DepthToMassBias);
        belief.Reset(Unlogged, 0, habits.UnloggedSpread);
    }

    PotFilter(PotFilter other)
    {
        (Pot, habits, belief, sizes) = (other.Pot, other.habits, other.belief.Copy(), new(other.sizes));
        (last, LastDipAt, Unexplained) = (other.last, other.LastDipAt, other.Unexplained);
    }

    public GlassMass Pot { get; private set; }

    /// <inheritdoc cref="PotHabits.DepthToMassBias"/>
    public double DepthToMassBias => habits.DepthToMassBias;

    public Instant? LastDipAt { get; private set; }

    public Estimate Unexplained { get; private set; }

    public Estimate Mass => new(belief.Mean(Glass), Math.Sqrt(belief.Variance(Glass)));

    public Estimate GatherFactor => Estimate.Relative(Math.Exp(belief.Mean(Bias)), Math.Sqrt(belief.Variance(Bias)));

    /// <summary>Gathers nobody logged, per logged one.</summary>
    public Estimate MissedPerLogged => new(Math.Max(0, belief.Mean(Missed)), Math.Sqrt(belief.Variance(Missed)));

    public void Apply(PotStep step)
    {
        Wander(step.At);
        switch (step.Event)
        {
            case PotEvent.Charge charge: Add(charge); break;
            case PotEvent.Gather gather: Take(gather, step.IsCounted); break;
            case PotEvent.WeighedGather weighed: Take(weighed); break;
            case PotEvent.LadleOut ladle: Shift(-ladle.Kilograms, ladle.Kilograms * ladle.RelativeUncertainty); break;
            case PotEvent.ReturnedGlass returned: Shift(returned.Kilograms, returned.Kilograms * returned.RelativeUncertainty); break;
            case PotEvent.UnloggedSpan span: Take(span); break;
            case PotEvent.Dip dip: Measure(dip); break;
            case PotEvent.PotChanged changed: Empty(changed); break;
            default: throw new ArgumentException($"{step.Event.GetType().Name} is no step of the pot", nameof(step));
        }
        KeepWithin(Pot.FullKilograms);
    }

    public PotFilter Copy() => new(this);

    public Estimate GathersLeft(string size, double nominalKilograms, double heelKilograms)
    {
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        var known = sizes.TryGetValue(size, out var own);
        var each = nominalKilograms * Math.Exp(belief.Mean(Bias) + (known ? belief.Mean(own) : 0));
        var left = Math.Max(0, belief.Mean(Glass) - heelKilograms) / each;
        slopes[Glass] = 1 / each;
        slopes[Bias] = -left;
        if (known) slopes[own] = -left;
        var variance = belief.VarianceOf(slopes) + (known ? 0 : Square(left * habits.GatherBiasPerSize));
        return new(left, Math.Sqrt(variance));
    }

    /// <summary>Habits change slowly: what was learnt long ago counts less.</summary>
    void Wander(Instant at)
    {
        if (last is { } before && at > before)
        {
            var days = (at - before).TotalDays;
            belief.AddVariance(Bias, Square(habits.GatherBiasPerDay) * days);
            belief.AddVariance(Missed, Square(habits.MissedPerDay) * days);
            belief.AddVariance(Unlogged, Square(habits.UnloggedPerDay) * days);
        }
        last = at;
    }

    void Add(PotEvent.Charge charge)
    {
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        var kilograms = charge.GlassKilograms * Math.Exp(belief.Mean(ChargeBias));
        slopes[ChargeBias] = kilograms;
        belief.ShiftMass(kilograms, slopes, Square(kilograms * charge.RelativeUncertainty));
    }

    void Take(PotEvent.Gather gather, bool isCounted)
    {
        var own = SizeElement(gather.Size);
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        var each = gather.NominalKilograms * Math.Exp(belief.Mean(Bias) + belief.Mean(own));
        var missed = isCounted ? 0 : belief.Mean(Missed);
        var taken = gather.Count * each * (1 + missed);
        slopes[Bias] = slopes[own] = -taken;
        slopes[Missed] = isCounted ? 0 : -gather.Count * each;
        var scatter = gather.Count * Square(each * habits.GatherScatter);
        var forgetting = gather.Count * Math.Max(0, missed) * habits.MissedInOneGo * Square(each);
        belief.ShiftMass(-taken, slopes, scatter + forgetting);
    }

    void Take(PotEvent.WeighedGather weighed)
    {
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        var missed = belief.Mean(Missed);
        slopes[Missed] = -weighed.Kilograms;
        var forgetting = Math.Max(0, missed) * habits.MissedInOneGo * Square(weighed.Kilograms);
        belief.ShiftMass(-weighed.Kilograms * (1 + missed), slopes, Square(weighed.Kilograms * weighed.RelativeUncertainty) + forgetting);
    }

    /// <summary>Days nobody logs are alike: if one took more than expected, so did the others, and a dip teaches how much.</summary>
    void Take(PotEvent.UnloggedSpan span)
    {
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        slopes[Unlogged] = -span.ExpectedKilograms;
        var taken = span.ExpectedKilograms * Math.Max(0, 1 + belief.Mean(Unlogged));
        belief.ShiftMass(-taken, slopes, Square(span.StandardUncertaintyKilograms));
    }

    void Shift(double kilograms, double standardUncertainty)
    {
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        belief.ShiftMass(kilograms, slopes, Square(standardUncertainty));
    }

    void Measure(PotEvent.Dip dip)
    {
        var factor = Math.Exp(belief.Mean(DepthBias));
        var found = Pot.KilogramsAtDepth(dip.DepthMetres);
        Span<double> slopes = stackalloc double[belief.Size];
        slopes.Clear();
        slopes[Glass] = factor;
        // At the mass found, not the one expected: before the first dip that is only the middle of the pot.
        slopes[DepthBias] = found;
        var variance = Square(Pot.KilogramsPerMetre(dip.DepthMetres) * dip.UncertaintyMetres);
        var innovation = found - belief.Mean(Glass) * factor;

        var doubt = Math.Sqrt(belief.VarianceOf(slopes) + variance);
        var isSurprise = Math.Abs(innovation) > habits.SurprisingDeviations * doubt;
        if (isSurprise) belief.AddVariance(Glass, Square(innovation));
        belief.Measure(innovation, slopes, variance);
        (LastDipAt, Unexplained) = (dip.At, isSurprise ? new(innovation, doubt) : Estimate.Exact(0));
    }

    void Empty(PotEvent.PotChanged changed)
    {
        Pot = changed.NewPot ?? Pot;
        belief.Reset(Glass, 0, 0);
    }

    /// <summary>A log that takes out more than there is, or overfills the pot, says something about the habits, or that an entry
    /// is missing.</summary>
    void KeepWithin(double fullKilograms)
    {
        var (mass, variance) = (belief.Mean(Glass), belief.Variance(Glass));
        if (mass >= 0 && mass <= fullKilograms) return;
        var bound = mass < 0 ? 0 : fullKilograms;
        var beyond = Math.Abs(mass - bound);
        if (beyond > habits.SurprisingDeviations * Math.Sqrt(variance))
        {
            belief.Reset(Glass, bound, beyond);
            return;
        }
        var inside = TruncatedNormal.Above(beyond / Math.Sqrt(variance));
        var step = Math.Sqrt(variance) * inside.Mean;
        belief.MoveMass(mass < 0 ? mass + step : mass - step, variance * inside.Variance);
    }

    int SizeElement(string size)
    {
        if (!sizes.TryGetValue(size, out var element)) sizes[size] = element = belief.Append(habits.GatherBiasPerSize);
        return element;
    }

    static double Square(double x) => x * x;
}
