namespace HotShop.Mutation;

/// <summary>Alters numbers one at a time and asks the checks, then the unit tests.</summary>
sealed class Hunt(WorkerProcess worker, UnitTests tests, IReadOnlyList<Mutant> numbers, TextWriter lines)
{
    /// <summary>The unaltered library must be green, or red would mean nothing.</summary>
    public async Task<string?> WrongUnaltered()
    {
        var answer = await worker.Ask(new(-1, false, tests.Folder));
        if (answer.Outcome != "green") return $"unaltered, a check is not met: {answer.By}";
        return (await tests.Failed("", "")).By is { } failed ? $"unaltered, a unit test fails: {failed}" : null;
    }

    public async Task<Finding> Of(int number)
    {
        var mutant = numbers[number];
        var (asInteger, finding) = (false, (Finding?)null);
        while (finding is null)
        {
            var answer = await worker.Ask(new(number, asInteger, tests.Folder));
            finding = answer.Outcome switch
            {
                "red" => Finding.Of(mutant, answer.AsInteger, Finding.Checks, answer.By),
                "broken" => throw new InvalidOperationException($"{mutant.Id}: {answer.By}"),
                "uncompilable" => Finding.Of(mutant, answer.AsInteger, Finding.Uncompilable, ""),
                _ => await ByTests(mutant, answer.AsInteger),
            };
            asInteger = true;
        }
        if (finding.Stage == Finding.Survived) await lines.WriteLineAsync($"survived: {finding.File}:{finding.Line}: {finding.Was} -> {finding.Now}  ({finding.Id})");
        return finding;
    }

    /// <returns>Null where the table could not hold a fraction: to be asked again with the next whole number.</returns>
    async Task<Finding?> ByTests(Mutant mutant, bool asInteger)
    {
        try
        {
            var (by, unreadable) = await tests.Failed(mutant.File, mutant.Area);
            if (unreadable && !asInteger && mutant.NextInteger is not null) return null;
            return Finding.Of(mutant, asInteger, by is null ? Finding.Survived : Finding.Tests, by ?? "");
        }
        finally
        {
            if (mutant.IsCopied) tests.Restore();
        }
    }
}
