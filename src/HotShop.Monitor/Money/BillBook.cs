using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Store;
using Microsoft.Data.Sqlite;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Money;

/// <summary>What became of a bill: the row that holds it (a new one, or the one that was there under the same id), or why it is refused.</summary>
public sealed record BillResult(Bill? Bill, bool IsNew, string? Refusal);

/// <summary>Bills, typed in or imported. Append-only: the same id is the same bill; a correction takes the place of what it corrects.</summary>
public sealed class BillBook(StudioPlan plan, IStoreWriter writer, IStoreReader store)
{
    const string Columns = "id, energy, first, last, quantity, unit, energy_kwh, amount, note, who, corrects";

    /// <summary>Checks a row and keeps it.</summary>
    public Task<BillResult> Add(BillRow row, Instant now, CancellationToken stop) => writer.Write(scope => Add(row, now, scope), stop);

    /// <summary>The same inside a transaction of the caller's: an import keeps all of its rows or none.</summary>
    public BillResult Add(BillRow row, Instant now, WriteScope scope)
    {
        var (bill, problem) = Check(row, now);
        if (bill is null) return new BillResult(null, false, problem);
        if (Find(bill.Id, scope.Connection) is { } known)
            return known == bill ? new BillResult(known, false, null) : new BillResult(null, false, $"there is another bill '{bill.Id}': to mend it send a new one with \"corrects\":\"{bill.Id}\"");
        if (bill.Corrects is { } of && Find(of, scope.Connection) is null) return new BillResult(null, false, $"there is no bill '{of}' to correct: see /api/bills");
        scope.Execute($"INSERT INTO bill ({Columns}, arrived) VALUES ($id, $energy, $first, $last, $quantity, $unit, $kwh, $amount, $note, $who, $corrects, $arrived)",
            ("$id", bill.Id), ("$energy", EnergyOf(bill.Kind)), ("$first", Day(bill.First)), ("$last", Day(bill.Last)), ("$quantity", Text(bill.Quantity)), ("$unit", bill.Unit.NameOf()),
            ("$kwh", Text(bill.EnergyKilowattHours)), ("$amount", Text(bill.Amount)), ("$note", bill.Note), ("$who", bill.Who), ("$corrects", bill.Corrects), ("$arrived", now.ToMicroseconds()));
        return new BillResult(bill, true, null);
    }

    /// <summary>Whether a row could be kept, from its own words alone.</summary>
    public (Bill? Bill, string? Problem) Check(BillRow row, Instant now) => BillForm.Check(row, now.InZone(plan.Zone).Date, () => $"bill-{Guid.NewGuid():N}"[..20]);

    /// <summary>Bills in force that share a day with [first, last], in order of their days.</summary>
    public IReadOnlyList<Bill> Touching(LocalDate first, LocalDate last)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"""
            SELECT {Columns} FROM bill b WHERE last >= $first AND first <= $last AND quantity IS NOT NULL
            AND NOT EXISTS (SELECT 1 FROM bill c WHERE c.corrects = b.id) ORDER BY first, energy, seq
            """;
        command.Parameters.AddWithValue("$first", Day(first));
        command.Parameters.AddWithValue("$last", Day(last));
        return Read(command);
    }

    /// <summary>Every bill that was ever kept, in the order they came, corrected ones included: what an export needs.</summary>
    public IReadOnlyList<Bill> All()
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {Columns} FROM bill ORDER BY seq";
        return Read(command);
    }

    /// <summary>A bill as the text it was typed as, for a file that can be imported again.</summary>
    public static BillRow Row(Bill bill) => new(
        bill.Id, EnergyOf(bill.Kind), Day(bill.First), Day(bill.Last), Text(bill.Quantity), bill.Unit.NameOf(), Text(bill.EnergyKilowattHours), Text(bill.Amount), bill.Note, bill.Who, bill.Corrects);

    static Bill? Find(string id, SqliteConnection connection)
    {
        using var command = connection.CreateCommand();
        command.CommandText = $"SELECT {Columns} FROM bill WHERE id = $id";
        command.Parameters.AddWithValue("$id", id);
        return Read(command).FirstOrDefault();
    }

    static List<Bill> Read(SqliteCommand command)
    {
        using var rows = command.ExecuteReader();
        var bills = new List<Bill>();
        while (rows.Read())
            bills.Add(new Bill(
                rows.GetString(0), rows.GetString(1) == "gas" ? EnergyKind.Gas : EnergyKind.Electricity, LocalDatePattern.Iso.Parse(rows.GetString(2)).Value, LocalDatePattern.Iso.Parse(rows.GetString(3)).Value,
                Number(rows.GetTextOrNull(4)), BilledUnits.Parse(rows.GetString(5))!.Value, Number(rows.GetTextOrNull(6)), Number(rows.GetTextOrNull(7)), rows.GetTextOrNull(8), rows.GetTextOrNull(9), rows.GetTextOrNull(10)));
        return bills;
    }

    static string EnergyOf(EnergyKind kind) => kind == EnergyKind.Gas ? "gas" : "electricity";

    static string Day(LocalDate day) => LocalDatePattern.Iso.Format(day);

    static string? Text(decimal? number) => number?.ToString(CultureInfo.InvariantCulture);

    static decimal? Number(string? text) => text is null ? null : decimal.Parse(text, CultureInfo.InvariantCulture);
}
