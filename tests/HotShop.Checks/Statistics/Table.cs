using System.Globalization;

namespace HotShop.Checks.Statistics;

/// <summary>A table of numbers that lies beside the checks; lines that start with # say where it is from.</summary>
static class Table
{
    /// <summary>Rows of fields without the heading.</summary>
    public static IReadOnlyList<string[]> Fields(string name)
    {
        using var reader = new StreamReader(typeof(Table).Assembly.GetManifestResourceStream($"HotShop.Checks.Statistics.{name}")!);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(l => l[0] != '#').Skip(1).Select(l => l.Trim().Split(','))];
    }

    public static double[] Numbers(IEnumerable<string> fields) => [.. fields.Select(f => double.Parse(f, CultureInfo.InvariantCulture))];
}
