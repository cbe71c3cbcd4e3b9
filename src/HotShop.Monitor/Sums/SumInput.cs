namespace HotShop.Monitor.Sums;

/// <summary>A field with what was typed into it.</summary>
/// <param name="Text">As typed, or the example; null: left out.</param>
/// <param name="Unit">Of a number.</param>
/// <param name="Number">In the canonical unit; null: left out, or wrong.</param>
/// <param name="Problem">What is wrong and what to write.</param>
public sealed record SumEntry(SumField Field, string? Text, SumUnit? Unit, Doubt? Number, string? Problem)
{
    /// <summary>Whether the sum counts it, with what was chosen before it.</summary>
    public bool IsAsked { get; init; } = true;
}

/// <summary>What a sum is worked from: every field's entry. Readers throw only on a programmer's mistake.</summary>
public sealed class SumInput
{
    readonly Dictionary<string, SumEntry> entries;

    internal SumInput(IReadOnlyList<SumEntry> entries) => (Entries, this.entries) = (entries, entries.ToDictionary(e => e.Field.Name));

    public IReadOnlyList<SumEntry> Entries { get; }

    public bool IsSound => Entries.All(e => e.Problem is null);

    /// <summary>A number that is always there.</summary>
    public Doubt this[string name] => entries[name].Number ?? throw new InvalidOperationException($"'{name}' was left out");

    public Doubt? Find(string name) => entries[name].Number;

    public string Choice(string name) => entries[name].Text ?? throw new InvalidOperationException($"'{name}' was left out");

    /// <summary>The same with a problem beside a field that only the sum itself could find.</summary>
    internal SumInput With(SumRefusal refusal) => new([.. Entries.Select(e => e.Field.Name == refusal.Field ? e with { Problem = refusal.Problem } : e)]);
}

/// <summary>A sum that cannot be worked with these numbers.</summary>
/// <param name="Field">The one to change.</param>
/// <param name="Problem">What is wrong and what to write.</param>
public sealed record SumRefusal(string Field, string Problem);
