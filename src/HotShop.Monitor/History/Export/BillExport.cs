using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Money;

namespace HotShop.Monitor.History.Export;

/// <summary>Writes every bill that was ever kept as a table that import takes back, corrected ones and corrections included.</summary>
sealed class BillExport(BillBook bills)
{
    /// <returns>Rows written.</returns>
    public long Write(Stream file, bool isCompressed)
    {
        using var lines = new CsvLines(file, isCompressed, BillRow.Columns);
        var all = bills.All();
        foreach (var row in all.Select(BillBook.Row))
        {
            lines.Text(row.Id).Raw(row.Energy ?? "").Raw(row.First ?? "").Raw(row.Last ?? "").Raw(row.Quantity ?? "").Raw(row.Unit ?? "").Raw(row.EnergyKwh ?? "").Raw(row.Amount ?? "");
            lines.Text(row.Note).Text(row.Who).Text(row.Corrects).End();
        }
        return all.Count;
    }
}
