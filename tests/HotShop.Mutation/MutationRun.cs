using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>One run from the command line to the verdict.</summary>
static class MutationRun
{
    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web) { WriteIndented = true };

    public static async Task<int> Of(Request request, string root, TextWriter lines)
    {
        using var session = new Session(root);
        var altered = await session.Prepare();
        var numbers = altered.Numbers();
        var chosen = request.Choose(numbers);
        await lines.WriteLineAsync($"{numbers.Count} numbers, {chosen.Count} of them to be altered");
        using var tests = new UnitTests(session.TestsFolder, session.Areas());
        using var worker = new WorkerProcess(["worker", session.FactsFile, session.LibraryFolder]);
        var hunt = new Hunt(worker, tests, numbers, lines);
        if (await hunt.WrongUnaltered() is { } wrong)
        {
            await lines.WriteLineAsync(wrong);
            return 1;
        }
        tests.Restore();

        var trusted = request.TrustRed is { Exists: true } file
            ? (await Read(file)).Where(f => f.Stage is Finding.Checks or Finding.Tests).GroupBy(f => f.Id).ToDictionary(g => g.Key, g => g.First())
            : [];
        var findings = new List<Finding>();
        foreach (var number in chosen)
        {
            findings.Add(trusted.TryGetValue(numbers[number].Id, out var known) && known.Was == numbers[number].Was ? known with { Line = numbers[number].Line } : await hunt.Of(number));
            if (findings.Count % 100 == 0) await lines.WriteLineAsync($"{findings.Count} of {chosen.Count}, {findings.Count(f => f.Stage == Finding.Survived)} survived");
        }
        var explanations = Explanation.Read(Path.Combine(root, "tests/HotShop.Mutation/explained.json"));
        if (request.Json is { } json) await File.WriteAllTextAsync(json.FullName, JsonSerializer.Serialize(findings, Format));
        if (request.Document) await File.WriteAllTextAsync(Path.Combine(root, MutationDocument.Path), MutationDocument.Markdown(findings, explanations));
        return await Verdict(findings, explanations, whole: chosen.Count == numbers.Count, lines);
    }

    static async Task<int> Verdict(List<Finding> findings, IReadOnlyList<Explanation> explanations, bool whole, TextWriter lines)
    {
        var survived = findings.Where(f => f.Stage == Finding.Survived).ToList();
        var unexplained = survived.Where(f => !explanations.Any(e => e.Explains(f.Id))).ToList();
        foreach (var finding in unexplained) await lines.WriteLineAsync($"NOT EXPLAINED: {finding.File}:{finding.Line}: {finding.Was} ({finding.Id})");
        var idle = explanations.Where(e => whole && !survived.Any(f => e.Explains(f.Id))).ToList();
        foreach (var explanation in idle) await lines.WriteLineAsync($"EXPLAINS NOTHING: {explanation.Numbers}");
        foreach (var finding in findings.Where(f => f.Stage == Finding.Uncompilable)) await lines.WriteLineAsync($"does not compile when altered: {finding.File}:{finding.Line}: {finding.Was}");
        await lines.WriteLineAsync($"{findings.Count} altered: {findings.Count(f => f.Stage == Finding.Checks)} told by checks, {findings.Count(f => f.Stage == Finding.Tests)} by unit tests, "
            + $"{survived.Count} survived, {unexplained.Count} of them not explained");
        return unexplained.Count == 0 && idle.Count == 0 ? 0 : 1;
    }

    static async Task<List<Finding>> Read(FileInfo file)
    {
        await using var stream = file.OpenRead();
        return (await JsonSerializer.DeserializeAsync<List<Finding>>(stream, Format))!;
    }
}
