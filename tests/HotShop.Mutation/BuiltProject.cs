using System.Diagnostics;
using System.Text.Json;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace HotShop.Mutation;

/// <summary>What a build compiled a project from.</summary>
/// <param name="Name">Of the assembly.</param>
/// <param name="Sources">Full paths, those that the build wrote included.</param>
/// <param name="References">Full paths of the assemblies it was compiled against.</param>
/// <param name="Resources">Names inside the assembly and the files they come from.</param>
sealed record BuiltProject(string Name, IReadOnlyList<string> Sources, IReadOnlyList<string> References, IReadOnlyDictionary<string, string> Resources)
{
    static readonly CSharpParseOptions Language = new(LanguageVersion.CSharp14);

    /// <summary>Builds a project (Release) and asks the build what went into it.</summary>
    public static async Task<BuiltProject> Ask(string project)
    {
        // The answer goes to a file: processes that the build leaves behind for the next one would keep a pipe open.
        var answer = Path.GetTempFileName();
        using var build = Process.Start("dotnet",
            ["msbuild", project, "-nologo", "-restore", "-t:Build", "-p:Configuration=Release", "-getItem:Compile", "-getItem:ReferencePathWithRefAssemblies", "-getItem:EmbeddedResource",
            "-getResultOutputFile:" + answer]);
        await build.WaitForExitAsync();
        if (build.ExitCode != 0) throw new InvalidOperationException($"{project} does not build");
        var output = await File.ReadAllTextAsync(answer);
        File.Delete(answer);
        using var json = JsonDocument.Parse(output);
        var items = json.RootElement.GetProperty("Items");
        return new(Path.GetFileNameWithoutExtension(project), Paths("Compile"), Paths("ReferencePathWithRefAssemblies"),
            items.GetProperty("EmbeddedResource").EnumerateArray().ToDictionary(r => r.GetProperty("ManifestResourceName").GetString()!, FullPath));

        List<string> Paths(string item) => [.. items.GetProperty(item).EnumerateArray().Select(FullPath)];

        // The build's own FullPath depends on the folder that its process happened to be in.
        string FullPath(JsonElement item) => Path.GetFullPath(item.GetProperty("Identity").GetString()!, Path.GetDirectoryName(project)!);
    }

    /// <summary>The compilation, without the assemblies of other projects named.</summary>
    public CSharpCompilation Compilation(params string[] without) => CSharpCompilation.Create(Name,
        Sources.Select(path => CSharpSyntaxTree.ParseText(SourceText.From(File.ReadAllText(path), System.Text.Encoding.UTF8), Language, path)),
        References.Where(r => !without.Contains(Path.GetFileNameWithoutExtension(r))).Select(r => MetadataReference.CreateFromFile(r)),
        new CSharpCompilationOptions(Sources.Any(s => s.Contains("EntryPoint", StringComparison.Ordinal)) ? OutputKind.ConsoleApplication : OutputKind.DynamicallyLinkedLibrary,
            optimizationLevel: OptimizationLevel.Release, nullableContextOptions: NullableContextOptions.Enable, deterministic: true));

    public IEnumerable<ResourceDescription> Descriptions(Func<string, byte[]>? read = null) =>
        Resources.Select(r => new ResourceDescription(r.Key, () => new MemoryStream(read is null ? File.ReadAllBytes(r.Value) : read(r.Key)), isPublic: true));
}
