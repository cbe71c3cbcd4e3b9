using System.Globalization;

namespace HotShop.Evaluation;

/// <summary>One line of a scorecard.</summary>
/// <param name="Target">What the value must reach; null: reported, not judged.</param>
/// <param name="Pass">Null where there is no target.</param>
sealed record Measure(string Name, double Value, string Unit, string? Target, bool? Pass)
{
    public static Measure AtLeast(string name, double value, string unit, double least) => new(name, value, unit, $">= {Text(least)}", value >= least);

    public static Measure AtMost(string name, double value, string unit, double most) => new(name, value, unit, $"<= {Text(most)}", value <= most);

    public static Measure Reported(string name, double value, string unit) => new(name, value, unit, null, null);

    public static string Text(double value) => value.ToString("0.####", CultureInfo.InvariantCulture);
}

/// <summary>A service's marks on one question.</summary>
/// <param name="Seed">First of the seeds.</param>
/// <param name="Pass">Every measure with a target reaches it.</param>
sealed record Scorecard(string Name, int Seed, IReadOnlyList<Measure> Measures)
{
    public bool Pass => Measures.All(m => m.Pass != false);
}
