namespace HotShop.Mutation;

/// <summary>What was asked for on the command line.</summary>
/// <param name="Count">Numbers of a random part; null: all.</param>
/// <param name="Only">Beginnings of ids; empty: all.</param>
/// <param name="Json">Where the findings go.</param>
/// <param name="TrustRed">Findings of an earlier run, of which those that were red are believed.</param>
/// <param name="Document">Whether to write docs/mutation.md.</param>
sealed record Request(int? Count, int Seed, IReadOnlyList<string> Only, FileInfo? Json, FileInfo? TrustRed, bool Document)
{
    /// <summary>The numbers asked for, as places in the list.</summary>
    public IReadOnlyList<int> Choose(IReadOnlyList<Mutant> numbers)
    {
        var wanted = Enumerable.Range(0, numbers.Count).Where(i => Only.Count == 0 || Only.Any(o => numbers[i].Id.StartsWith(o, StringComparison.Ordinal))).ToArray();
        if (Count is null || Count >= wanted.Length) return wanted;
#pragma warning disable CA5394 // A sample to repeat, not a secret.
        new Random(Seed).Shuffle(wanted);
#pragma warning restore CA5394
        return [.. wanted.Take(Count.Value).Order()];
    }
}
