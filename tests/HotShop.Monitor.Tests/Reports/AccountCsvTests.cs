using System.Globalization;
using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using HotShop.Monitor.Reports;
using HotShop.Monitor.Tests.Money;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Money.AccountTests;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>The table that spreadsheets open: RFC 4180, the country's separator and decimal mark, no cell that runs.</summary>
public sealed class AccountCsvTests
{
    static readonly PriceOptions[] prices =
    [
        new() { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.1037m, StandingChargePerMonth = 14.5m, Taxes = [new() { Name = "VAT", Percent = 19 }] },
        new() { From = "2026-01-01", Energy = "electricity", PerKilowattHour = 0.2899m },
    ];

    static async Task<(Account Account, StudioFormat Format, byte[] Bytes)> AWeek(StudioConfiguration configuration)
    {
        await using var studio = await Filled(configuration, Instant.FromUtc(2026, 3, 1, 12, 0), Instant.FromUtc(2026, 3, 9, 12, 0));
        var book = studio.The<AccountBook>();
        var account = book.Of(Day("2026-03-02"), Day("2026-03-08"), studio.Now);
        return (account, book.Format, AccountCsv.Of(account, book.Format));
    }

    /// <summary>A reader of RFC 4180 that knows nothing of ours: quotes doubled inside quotes, records end with CR LF.</summary>
    internal static List<string[]> Cells(byte[] bytes, char separator)
    {
        var text = Encoding.UTF8.GetString(bytes);
        Assert.Equal('\ufeff', text[0]);
        var (rows, row, cell, isQuoted) = (new List<string[]>(), new List<string>(), new StringBuilder(), false);
        for (var i = 1; i < text.Length; i++)
        {
            var c = text[i];
            if (isQuoted)
            {
                if (c != '"') cell.Append(c);
                else if (i + 1 < text.Length && text[i + 1] == '"') { cell.Append('"'); i++; }
                else isQuoted = false;
            }
            else if (c == '"') isQuoted = true;
            else if (c == separator || c == '\r')
            {
                row.Add(cell.ToString());
                cell.Clear();
                if (c != '\r') continue;
                Assert.Equal('\n', text[++i]);
                rows.Add([.. row]);
                row.Clear();
            }
            else cell.Append(c);
        }
        Assert.Empty(row);
        return rows;
    }

    [Fact]
    public async Task A_German_studio_gets_semicolons_and_decimal_commas_and_every_sum_is_the_page_s()
    {
        var (account, format, bytes) = await AWeek(Steady(prices: prices));
        Assert.Equal([0xEF, 0xBB, 0xBF], bytes[..3]);
        var rows = Cells(bytes, ';');
        Assert.Equal(["row", "day", "appliance", "name", "purpose", "energy", "known", "energy [kWh]", "gas [m³]", "amount [EUR]", "measured [%]"], rows[0][..11]);
        Assert.Equal(["energy low 95 % [kWh]", "energy high 95 % [kWh]", "amount low 95 % [EUR]", "amount high 95 % [EUR]"], rows[0][11..]);
        Assert.All(rows, r => Assert.Equal(rows[0].Length, r.Length));
        static decimal Number(string cell) => cell.Length == 0 ? 0 : decimal.Parse(cell, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.GetCultureInfo("").WithComma());
        static decimal Amount(string[] row) => Number(row[9]);
        var total = Assert.Single(rows, r => r[0] == "total" && r[5] == "all");
        Assert.Equal(account.Cost!.Value, Amount(total));
        Assert.Equal(account.Cost.Value, rows.Where(r => r[0] is "part" or "standing").Sum(Amount));
        Assert.Equal(account.Cost.Value, rows.Where(r => r[0] == "total" && r[5] != "all").Sum(Amount));
        Assert.Equal((7, 7 * 3), (rows.Count(r => r[0] == "standing"), rows.Count(r => r[0] == "part")));
        Assert.Equal((account.Cost.Low95, account.Cost.High95), (Number(total[13]), Number(total[14])));
        Assert.All(rows.Where(r => r[0] == "part"), r => Assert.True(Number(r[11]) < Number(r[7]) && Number(r[7]) < Number(r[12]), string.Join(';', r)));
        Assert.All(rows.Where(r => r[0] == "standing"), r => Assert.Equal((r[9], r[9]), (r[13], r[14])));
        // To the last digit what the page shows.
        var first = account.Days[0].Parts[0];
        var row = rows.First(r => r[0] == "part");
        Assert.Equal((first.Amount!.Text, first.EnergyKwh.Text, first.GasCubicMetres.Text), ($"{row[9]}\u00a0€", $"{row[7]}\u00a0kWh", $"{row[8]}\u00a0m³"));
    }

    [Fact]
    public async Task A_studio_in_the_United_States_gets_commas_points_and_hundreds_of_cubic_feet()
    {
        var (account, _, bytes) = await AWeek(Steady("America/New_York", "USD", prices));
        var rows = Cells(bytes, ',');
        Assert.Equal(("gas [CCF]", "amount [USD]"), (rows[0][8], rows[0][9]));
        Assert.Equal(account.Cost!.Value.ToString("F2", CultureInfo.InvariantCulture), Assert.Single(rows, r => r[0] == "total" && r[5] == "all")[9]);
        Assert.StartsWith("$", account.Cost.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("=HYPERLINK(\"http://evil.example\",\"x\")")]
    [InlineData("+49 30 furnace")]
    [InlineData("-1+1|cmd")]
    [InlineData("@SUM(A1:A9)")]
    [InlineData("\tTab")]
    [InlineData("\rReturn")]
    public async Task An_appliance_with_a_hostile_name_is_text_and_runs_nothing(string name)
    {
        var configuration = Steady(prices: prices);
        var (_, _, bytes) = await AWeek(configuration with { Appliances = [configuration.Appliances[0] with { Name = name }, .. configuration.Appliances.Skip(1)] });
        var rows = Cells(bytes, ';');
        Assert.Contains(rows, r => r[3] == "'" + name);
        Assert.DoesNotContain(rows.SelectMany(r => r), c => c.Length > 0 && "=+@\t\r".Contains(c[0], StringComparison.Ordinal));
        // A minus may only begin a number.
        Assert.All(rows.SelectMany(r => r).Where(c => c.StartsWith('-')), c => Assert.Matches("^-[0-9]+(,[0-9]+)?$", c));
    }

    [Theory, InlineData("Big; \"old\"\nfurnace"), InlineData("two\nlines"), InlineData("two\rlines"), InlineData("a;b"), InlineData(" blanks ")]
    public async Task A_name_with_quotes_separators_or_line_breaks_stays_one_cell(string name)
    {
        var configuration = Steady(prices: prices);
        var (_, _, bytes) = await AWeek(configuration with { Appliances = [configuration.Appliances[0] with { Name = name }, .. configuration.Appliances.Skip(1)] });
        Assert.Contains(Cells(bytes, ';'), r => r[3] == name);
    }

    [Fact]
    public async Task Days_without_a_price_have_an_empty_cell_and_a_note()
    {
        var (_, _, bytes) = await AWeek(Steady(prices: [prices[0] with { From = "2026-03-05" }, prices[1]]));
        var rows = Cells(bytes, ';');
        Assert.All(rows.Where(r => r[0] == "part" && r[5] == "gas" && string.CompareOrdinal(r[1], "2026-03-05") < 0), r => Assert.Equal("", r[9]));
        Assert.Contains("no price of gas for 2 Mar 2026 to 4 Mar 2026", Assert.Single(rows, r => r[0] == "note")[3], StringComparison.Ordinal);
    }
}

static class Cultures
{
    /// <summary>Numbers with a decimal comma; the tests run without the system's cultures.</summary>
    public static CultureInfo WithComma(this CultureInfo invariant)
    {
        var culture = (CultureInfo)invariant.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        return culture;
    }
}
