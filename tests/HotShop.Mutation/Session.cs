using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>What the run and its workers share: what the build said of the three projects, in a file that lives as long as the run.</summary>
sealed class Session(string root) : IDisposable
{
    readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("mutation-");

    public string LibraryFolder { get; } = Path.Combine(root, "src/HotShop.Physics");

    public string TestsFolder { get; } = Path.Combine(root, "tests/HotShop.Physics.Tests/bin/Release/net10.0");

    public string FactsFile => Path.Combine(folder.FullName, "projects.json");

    /// <summary>Folders of the library for which there are unit tests.</summary>
    public IReadOnlySet<string> Areas() => Directory.EnumerateDirectories(Path.Combine(root, "tests/HotShop.Physics.Tests"))
        .Where(d => Directory.EnumerateFiles(d, "*Tests.cs").Any()).Select(d => Path.GetFileName(d)).ToHashSet(StringComparer.Ordinal);

    public async Task<AlteredLibrary> Prepare()
    {
        // The tests first: building them builds the others.
        var tests = await BuiltProject.Ask(Path.Combine(root, "tests/HotShop.Physics.Tests/HotShop.Physics.Tests.csproj"));
        var checks = await BuiltProject.Ask(Path.Combine(root, "tests/HotShop.Checks/HotShop.Checks.csproj"));
        var library = await BuiltProject.Ask(Path.Combine(LibraryFolder, "HotShop.Physics.csproj"));
        await File.WriteAllTextAsync(FactsFile, JsonSerializer.Serialize(new[] { library, checks, tests }));
        return Load(FactsFile, LibraryFolder);
    }

    public static AlteredLibrary Load(string factsFile, string libraryFolder)
    {
        var projects = JsonSerializer.Deserialize<BuiltProject[]>(File.ReadAllText(factsFile))!;
        return new(projects[0], projects[1], projects[2], libraryFolder);
    }

    public void Dispose() => folder.Delete(recursive: true);
}
