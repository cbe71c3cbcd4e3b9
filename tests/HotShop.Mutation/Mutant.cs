namespace HotShop.Mutation;

/// <summary>One number of the library, and what it is altered to.</summary>
/// <param name="Id">File, place in it and the number; the same as long as these are. Explanations name it.</param>
/// <param name="File">From the library's folder, with forward slashes.</param>
/// <param name="Line">From 1.</param>
/// <param name="Was">The number as written.</param>
/// <param name="Now">What it is altered to.</param>
/// <param name="NextInteger">For a whole number in a table: the next one, tried where the table cannot hold a fraction.</param>
/// <param name="Order">For code: where in the file the number starts; for a table: the how manieth number it is.</param>
/// <param name="IsCopied">Whether compilers copy the number into the code that uses it, as they do constants and the values of parameters left out.</param>
sealed record Mutant(string Id, string File, int Line, string Was, string Now, string? NextInteger, int Order, bool IsCopied)
{
    public bool IsCode => File.EndsWith(".cs", StringComparison.Ordinal);

    /// <summary>The folder at the top, which is the subject.</summary>
    public string Area => File.Contains('/', StringComparison.Ordinal) ? File[..File.IndexOf('/', StringComparison.Ordinal)] : "";
}
