using System.IO.Enumeration;
using System.Text.Json;

namespace HotShop.Mutation;

/// <summary>Why a number may survive.</summary>
/// <param name="Numbers">An id, with <c>*</c> for any text.</param>
/// <param name="Why">For a reader who does not know the code.</param>
sealed record Explanation(string Numbers, string Why)
{
    static readonly JsonSerializerOptions Web = new(JsonSerializerDefaults.Web);

    public bool Explains(string id) => FileSystemName.MatchesSimpleExpression(Numbers.Replace("\\", "\\\\", StringComparison.Ordinal), id, ignoreCase: false);

    public static IReadOnlyList<Explanation> Read(string path) => JsonSerializer.Deserialize<List<Explanation>>(File.ReadAllText(path), Web)!;
}
