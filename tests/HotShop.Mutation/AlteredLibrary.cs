using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.Text;

namespace HotShop.Mutation;

/// <summary>The library with one number altered, compiled in memory; and what was compiled against it, where that holds copies of the number.</summary>
sealed class AlteredLibrary
{
    readonly BuiltProject library, checks, tests;
    readonly string folder;
    readonly CSharpCompilation code;
    readonly Dictionary<string, (string Name, byte[] Compact)> tables;
    readonly byte[] unaltered;

    public AlteredLibrary(BuiltProject library, BuiltProject checks, BuiltProject tests, string folder)
    {
        (this.library, this.checks, this.tests, this.folder) = (library, checks, tests, folder);
        code = library.Compilation();
        tables = library.Resources.ToDictionary(r => Local(r.Value), r => (r.Key, TableNumbers.Compact(File.ReadAllBytes(r.Value))));
        unaltered = Emit(code, library.Descriptions(name => tables.Values.First(t => t.Name == name).Compact)) ?? throw new InvalidOperationException("the unaltered library does not compile");
    }

    /// <summary>Every number, in the order of files.</summary>
    public IReadOnlyList<Mutant> Numbers()
    {
        var ours = code.SyntaxTrees.Where(t => !t.FilePath.Contains("/obj/", StringComparison.Ordinal)).OrderBy(t => t.FilePath, StringComparer.Ordinal);
        var inCode = ours.SelectMany(tree => CodeNumbers.In(tree, code.GetSemanticModel(tree), Local(tree.FilePath)));
        var inTables = library.Resources.Values.Order(StringComparer.Ordinal).SelectMany(path => TableNumbers.In(File.ReadAllBytes(path), Local(path)));
        return [.. inCode, .. inTables];
    }

    /// <param name="mutant">Null: nothing altered.</param>
    /// <param name="now">The text that stands instead.</param>
    /// <returns>The library's image; null where it does not compile with that number.</returns>
    public byte[]? Library(Mutant? mutant, string now)
    {
        if (mutant is null) return unaltered;
        if (!mutant.IsCode) return Patched(tables[mutant.File].Compact, TableNumbers.Altered(tables[mutant.File].Compact, mutant.Order, now));
        var tree = code.SyntaxTrees.First(t => Local(t.FilePath) == mutant.File);
        var altered = tree.WithChangedText(tree.GetText().WithChanges(new TextChange(new(mutant.Order, mutant.Was.Length), now)));
        return Emit(code.ReplaceSyntaxTree(tree, altered), library.Descriptions(name => tables.Values.First(t => t.Name == name).Compact));
    }

    /// <summary>The checks compiled against a library's image.</summary>
    public byte[]? Checks(byte[] image) => Emit(checks.Compilation(library.Name).AddReferences(MetadataReference.CreateFromImage(image)), checks.Descriptions());

    /// <summary>The unit tests compiled against a library's and the checks' image.</summary>
    public byte[]? Tests(byte[] image, byte[] checksImage) =>
        Emit(tests.Compilation(library.Name, checks.Name).AddReferences(MetadataReference.CreateFromImage(image), MetadataReference.CreateFromImage(checksImage)), tests.Descriptions());

    string Local(string path) => Path.GetRelativePath(folder, path).Replace('\\', '/');

    /// <summary>A table lies in the assembly byte for byte: altering it there costs no compilation.</summary>
    byte[] Patched(byte[] was, byte[] now)
    {
        var at = unaltered.AsSpan().IndexOf(was);
        if (at < 0 || was.Length != now.Length) throw new InvalidOperationException("the table was not found in the assembly");
        var image = (byte[])unaltered.Clone();
        now.CopyTo(image, at);
        return image;
    }

    static byte[]? Emit(CSharpCompilation compilation, IEnumerable<ResourceDescription> resources)
    {
        using var image = new MemoryStream();
        return compilation.Emit(image, manifestResources: resources).Success ? image.ToArray() : null;
    }
}
