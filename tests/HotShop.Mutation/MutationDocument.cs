using System.Globalization;
using System.Text;

namespace HotShop.Mutation;

/// <summary>A whole run as a page for people: docs/mutation.md.</summary>
static class MutationDocument
{
    public const string Path = "docs/mutation.md";

    public static string Markdown(IReadOnlyList<Finding> findings, IReadOnlyList<Explanation> explanations)
    {
        var page = new StringBuilder();
        var altered = findings.Where(f => f.Stage != Finding.Uncompilable).ToList();
        var survived = altered.Where(f => f.Stage == Finding.Survived).ToList();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Which numbers the checks nail

            A check is worth what it notices. Each number of `src/HotShop.Physics`, in its code and in its tables, was altered by itself; then every published
            value of [checks.md](checks.md) was computed again, and where all were still met, the library's unit tests ran. A number that turned nothing red is
            listed below with the reason why it may.

            - **Altered by** five per mille up (times 1.005); 0 becomes 0.005. A whole number that can hold no fraction becomes the next one.
            - **Which numbers**: each real and decimal literal, each whole literal that the compiler turns into a real one, each value of a constant, of a static table or
              of a parameter left out, and each number of an embedded JSON table. Left alone: indices, counts and steps of loops, values of enums, and 0 and 1 inside
              a formula.
            - The comparison of [checks.md](checks.md) with what would be generated does not count as a test here. A test that comes to no end counts as red.

            `dotnet run --project tests/HotShop.Mutation -c Release -- --document` runs all of it and writes this page; `--count 60 --seed 1` takes a random part,
            `--only Glass/` a folder. A survivor without an explanation in `tests/HotShop.Mutation/explained.json` fails the run.

            | area | numbers | told by a check | told by a unit test | survived |
            | --- | ---: | ---: | ---: | ---: |

            """);
        foreach (var area in altered.GroupBy(f => f.File.Contains('/', StringComparison.Ordinal) ? f.File.Split('/')[0] : "(common)").OrderBy(g => g.Key, StringComparer.Ordinal)) Row(page, area.Key, [.. area]);
        Row(page, "**all**", altered);
        page.Append(CultureInfo.InvariantCulture, $"\n## Survivors\n\n");
        if (survived.Count == 0) page.Append("None.\n");
        else page.Append("| number | altered to | why it may |\n| --- | --- | --- |\n");
        foreach (var finding in survived)
            page.Append(CultureInfo.InvariantCulture, $"| `{finding.Id.Replace("|", "\\|", StringComparison.Ordinal)}` | {finding.Now} | {explanations.FirstOrDefault(e => e.Explains(finding.Id))?.Why ?? "**not explained**"} |\n");
        return page.ToString();
    }

    static void Row(StringBuilder page, string name, List<Finding> findings) => page.Append(CultureInfo.InvariantCulture,
        $"| {name} | {findings.Count} | {findings.Count(f => f.Stage == Finding.Checks)} | {findings.Count(f => f.Stage == Finding.Tests)} | {findings.Count(f => f.Stage == Finding.Survived)} |\n");
}
