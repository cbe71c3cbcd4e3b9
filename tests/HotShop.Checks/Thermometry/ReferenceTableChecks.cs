using System.Globalization;
using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>Printed tables of voltage over temperature, for every type from its lowest to its highest degree and on both sides of the seams of
/// its function: to the last digit printed.</summary>
static class ReferenceTableChecks
{
    public static IEnumerable<Check> All => Rows().Select(Row);

    static Check Row(string[] cells)
    {
        var (type, celsius) = (Enum.Parse<ThermocoupleType>(cells[0]), double.Parse(cells[1], CultureInfo.InvariantCulture));
        var isRead = cells[3] == "read";
        return Check.Printed($"type {type} at {cells[1]} °C", cells[2], "mV", isRead ? $"{Couples.Monograph}, table of type {type}" : $"{Couples.Monograph}, reference function of type {type}, evaluated by a separate program",
            () => Thermocouple.OfType(type).Millivolts(celsius) ?? double.NaN, isRead ? Standing.Read : Standing.Computed);
    }

    static IEnumerable<string[]> Rows()
    {
        using var stream = typeof(ReferenceTableChecks).Assembly.GetManifestResourceStream("HotShop.Checks.Thermometry.reference-tables.csv")!;
        using var lines = new StreamReader(stream);
        while (lines.ReadLine() is { } line)
            if (line[0] != '#' && !line.StartsWith("type", StringComparison.Ordinal)) yield return line.Split(',');
    }
}
