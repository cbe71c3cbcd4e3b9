namespace HotShop.Physics.Statistics;

/// <summary>What the values up to each one say of the level (filter), what all of them say (smoother), and how likely they are.</summary>
public sealed class LevelCourse
{
    readonly Estimate[] predicted, filtered;
    readonly LocalLevel model;

    internal LevelCourse(LocalLevel model, IReadOnlyList<double?> values, Estimate? before)
    {
        ArgumentNullException.ThrowIfNull(values);
        this.model = model;
        First = before is null ? values.TakeWhile(v => v is null).Count() : 0;
        if (First == values.Count) throw new ArgumentException("expected a value", nameof(values));
        predicted = new Estimate[values.Count];
        filtered = new Estimate[values.Count];
        Forecast = Seen(First, before, values[First]);
        for (var i = First + 1; i < values.Count; i++) Forecast = Seen(i, Forecast, values[i]);
    }

    /// <summary>Place of the first value that is not missing, before which nothing is known.</summary>
    public int First { get; }

    /// <summary>The level at each place from what came before it; not known up to the first value where nothing was believed.</summary>
    public IReadOnlyList<Estimate> Predicted => predicted;

    /// <summary>The level at each place from the values up to it.</summary>
    public IReadOnlyList<Estimate> Filtered => filtered;

    /// <summary>The level one step after the last value; the level does not drift, so further steps add variance alone.</summary>
    public Estimate Forecast { get; private set; }

    /// <summary>Of the values after the first, the values before given: natural logarithm of their density.</summary>
    public double LogLikelihood { get; private set; }

    double squares;
    int surprises;

    /// <summary>Mean of squared surprises over their variances, 1 where the variances are right.</summary>
    public double MeanSquaredSurprise => squares / surprises;

    /// <summary>Variance of a value about its prediction at a place, in the unit squared.</summary>
    public double SurpriseVariance(int place) => Square(predicted[place].StandardUncertainty) + model.NoiseVariance;

    /// <summary>The level at each place from all values, from the first on.</summary>
    public IReadOnlyList<Estimate> Smoothed()
    {
        var smoothed = filtered.ToArray();
        for (var i = smoothed.Length - 2; i >= First; i--)
        {
            // Nothing is learnt backwards from what was already expected.
            var ahead = Square(filtered[i].StandardUncertainty) + model.StepVariance;
            var pull = Square(filtered[i].StandardUncertainty) / ahead;
            smoothed[i] = new(
                filtered[i].Value + pull * (smoothed[i + 1].Value - filtered[i].Value),
                Math.Sqrt(Square(filtered[i].StandardUncertainty) + pull * pull * (Square(smoothed[i + 1].StandardUncertainty) - ahead)));
        }
        return smoothed;
    }

    Estimate Seen(int place, Estimate? expected, double? value)
    {
        if (expected is { } before) predicted[place] = before;
        filtered[place] = (expected, value) switch
        {
            (null, { } only) => new(only, Math.Sqrt(model.NoiseVariance)),
            ({ } level, null) => level,
            ({ } level, { } seen) => Updated(level, seen, place),
            _ => throw new InvalidOperationException("nothing is known yet"),
        };
        return filtered[place] with { StandardUncertainty = Math.Sqrt(Square(filtered[place].StandardUncertainty) + model.StepVariance) };
    }

    Estimate Updated(Estimate level, double value, int place)
    {
        var (surprise, variance) = (value - level.Value, SurpriseVariance(place));
        var gain = 1 - model.NoiseVariance / variance;
        if (place > First)
        {
            LogLikelihood -= (Math.Log(2 * Math.PI * variance) + surprise * surprise / variance) / 2;
            squares += surprise * surprise / variance;
            surprises++;
        }
        return new(level.Value + gain * surprise, Math.Sqrt(gain * model.NoiseVariance));
    }

    static double Square(double value) => value * value;
}
