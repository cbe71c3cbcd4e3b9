using HotShop.Checks.Statistics;

namespace HotShop.Checks;

/// <summary>Published data that a picture may show as well as a check.</summary>
public static class PublishedSeries
{
    /// <summary>Annual flow of the Nile at Aswan, 10⁸ m³, 1871 to 1970.</summary>
    public static IReadOnlyList<(double Year, double Value)> Nile() => [.. Table.Fields("nile.csv").Select(Table.Numbers).Select(row => (row[0], row[1]))];

    /// <summary>Twenty group means about a target of 325: NIST/SEMATECH e-Handbook of Statistical Methods, 6.3.2.3.</summary>
    public static IReadOnlyList<double> HandbookMeans => ChartChecks.Means;
}
