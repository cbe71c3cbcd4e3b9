using System.Globalization;
using System.Text;

namespace HotShop.Checks;

/// <summary>Tables of published values that lie beside the checks as CSV: lines that begin with # tell the source, the first other line names the columns.</summary>
static class Published
{
    /// <param name="name">Path inside this project with dots, such as <c>Gas.iso6976-components.csv</c>.</param>
    public static IEnumerable<Dictionary<string, string>> Rows(string name)
    {
        using var stream = typeof(Published).Assembly.GetManifestResourceStream("HotShop.Checks." + name)
            ?? throw new InvalidOperationException($"table {name} is not built into HotShop.Checks");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        string[]? columns = null;
        var rows = new List<Dictionary<string, string>>();
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#') continue;
            var cells = line.Split(',');
            if (columns is null) columns = cells;
            else rows.Add(columns.Zip(cells).ToDictionary(p => p.First, p => p.Second));
        }
        return rows;
    }

    public static double Number(string cell) => double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);
}
