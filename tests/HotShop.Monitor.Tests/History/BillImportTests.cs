using System.Text;
using HotShop.Monitor.History.Export;
using HotShop.Monitor.Money;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.History;

/// <summary>A list of bills, as an owner copies it from paper: all of it or nothing, once, and back.</summary>
public sealed class BillImportTests
{
    const string List = """
        id,energy,first,last,quantity,unit,amount,note
        jan,gas,2026-01-01,2026-01-31,1843.2,m3,2123.45,"=with care"
        feb,gas,2026-02-01,2026-02-28,1650,m3,1901.10,
        ,electricity,2026-01-01,2026-01-31,912,kWh,301.00,
        """;

    [Fact]
    public async Task A_list_is_kept_once_and_comes_back_as_it_was()
    {
        await using var studio = Tables.Open();
        Assert.Equal(3, (await studio.Import("bills", List, dryRun: true)).Added);
        Assert.Empty(studio.The<BillBook>().All());
        Assert.Equal(3, (await studio.Import("bills", List)).Added);
        Assert.Equal(3, (await studio.Import("bills", List)).Known);
        using var file = new MemoryStream();
        Assert.Equal(3, new BillExport(studio.The<BillBook>()).Write(file, isCompressed: false));
        Assert.Contains("'=with care", Encoding.UTF8.GetString(file.ToArray()), StringComparison.Ordinal);
        await using var second = Tables.Open();
        Assert.Equal(3, (await second.Import("bills", file.ToArray())).Added);
        Assert.Equal(studio.The<BillBook>().All(), second.The<BillBook>().All());
    }

    [Fact]
    public async Task One_bad_row_and_no_bill_is_kept()
    {
        await using var studio = Tables.Open();
        var report = await studio.Import("bills", List + "\n,steam,2026-01-01,2026-01-31,9,kWh,1,\n,gas,2026-01-31,2026-01-01,9,m3,1,\n");
        Assert.Equal([5L, 6], report.Problems.Select(p => p.Line));
        Assert.Empty(studio.The<BillBook>().All());
    }
}
