namespace HotShop.Monitor.Sums;

/// <summary>One thing a sum asks for.</summary>
/// <param name="Name">In the address.</param>
/// <param name="Label">As people read it.</param>
public abstract record SumField(string Name, string Label)
{
    /// <summary>What it is for or where to find it; null where the label says all.</summary>
    public string? Hint { get; init; }

    /// <summary>Asked for only where another field has one of these values; null: always.</summary>
    public SumWhen? When { get; init; }
}

/// <summary>A number.</summary>
/// <param name="Least">Smallest that is taken, in the canonical unit.</param>
/// <param name="Most">Largest.</param>
/// <param name="Example">Taken where nothing is asked, in the canonical unit; null: may be left out.</param>
public sealed record NumberField(string Name, string Label, Measure Measure, double Least, double Most, double? Example) : SumField(Name, Label)
{
    /// <summary>It has an example and may be left out all the same.</summary>
    public bool MayBeEmpty { get; init; }

    /// <summary>A unit that fits it better than the studio's usual; null: the usual.</summary>
    public (string Metric, string Us)? Usual { get; init; }

    public SumUnit Unit(bool isUs) => Usual is { } usual ? Measure.Find(isUs ? usual.Us : usual.Metric)! : Measure.First(isUs);
}

/// <summary>One of several; the first is taken where nothing is asked.</summary>
public sealed record ChoiceField(string Name, string Label, IReadOnlyList<SumChoice> Choices) : SumField(Name, Label);

public sealed record SumChoice(string Value, string Words);

/// <summary>A condition on a choice that is made before.</summary>
public sealed record SumWhen(string Field, params IReadOnlyList<string> Values);
