using System.Diagnostics;

namespace HotShop.Mutation;

/// <summary>The library's unit tests in a copy of their folder, where altered assemblies can be laid.</summary>
sealed class UnitTests : IDisposable
{
    const string Program = "HotShop.Physics.Tests";

    /// <summary>Many times what they take unaltered.</summary>
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    readonly string built;
    readonly IReadOnlySet<string> areas;
    readonly Dictionary<string, string> told = [];

    /// <param name="builtFolder">Where the build left the tests.</param>
    /// <param name="areas">Folders of the library that have tests of their own: asked for others, the runner would fail for want of tests.</param>
    public UnitTests(string builtFolder, IReadOnlySet<string> areas)
    {
        (built, this.areas) = (builtFolder, areas);
        foreach (var file in Directory.EnumerateFiles(built)) File.Copy(file, Path.Combine(Folder, Path.GetFileName(file)));
    }

    public string Folder { get; } = Directory.CreateTempSubdirectory("altered-").FullName;

    /// <summary>Lays the assemblies back that an altered constant may have changed.</summary>
    public void Restore()
    {
        foreach (var name in new[] { "HotShop.Physics.dll", "HotShop.Checks.dll", Program + ".dll" }) File.Copy(Path.Combine(built, name), Path.Combine(Folder, name), overwrite: true);
    }

    /// <summary>
    /// Runs the likeliest to tell first: the class that told the last number of the file, then its area's, then the others. The checks have run before, and the
    /// comparison with the document is no test of a number.
    /// </summary>
    /// <returns>The first that failed, or null; and whether it failed because a table could not be read.</returns>
    public async Task<(string? By, bool Unreadable)> Failed(string file, string area)
    {
        if (told.TryGetValue(file, out var last) && await Run(["-class", last]) is { By: not null } again) return again;
        string[] others = ["-class-", $"{Program}.ChecksTests", "-class-", $"{Program}.ChecksDocumentTests"];
        if (areas.Contains(area))
        {
            if (Remembered(await Run(["-namespace", $"{Program}.{area}"])) is { By: not null } early) return early;
            others = [.. others, "-namespace-", $"{Program}.{area}"];
        }
        return Remembered(await Run(others));

        (string? By, bool Unreadable) Remembered((string? By, bool Unreadable) verdict)
        {
            if (verdict.By is { } by && by.StartsWith(Program, StringComparison.Ordinal)) told[file] = string.Join('.', by.Split('(')[0].Split('.')[..^1]);
            return verdict;
        }
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    async Task<(string? By, bool Unreadable)> Run(string[] filter)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(Folder, Program + ".dll"), "-stopOnFail", "-noColor", "-noLogo", .. filter]) { RedirectStandardOutput = true, RedirectStandardError = true };
        using var tests = Process.Start(start)!;
        using var patience = new CancellationTokenSource(Patience);
        try
        {
            var errors = tests.StandardError.ReadToEndAsync(patience.Token);
            var output = await tests.StandardOutput.ReadToEndAsync(patience.Token) + await errors;
            await tests.WaitForExitAsync(patience.Token);
            if (tests.ExitCode == 0) return (null, false);
            var failed = output.Split('\n').FirstOrDefault(l => l.Contains("[FAIL]", StringComparison.Ordinal));
            return (failed?.Replace("[FAIL]", "", StringComparison.Ordinal).Trim() ?? "the tests ended early", output.Contains("JsonException", StringComparison.Ordinal));
        }
        catch (OperationCanceledException)
        {
            tests.Kill(entireProcessTree: true);
            return ("the tests came to no end", false);
        }
    }
}
