using HotShop.Monitor.Configuration;
using HotShop.Monitor.History.Csv;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.History.Import;

/// <summary>A row of a table of readings, checked and in the unit it is stored in.</summary>
readonly record struct ReadingLine(ChannelPlan Channel, string Unit, Instant At, ImportedRow Row);

/// <summary>Makes readings of rows <c>channel,time,value[,unit]</c>; the channel is described as it was at the time of the reading.</summary>
sealed class ReadingLines(StudioPlan plan, PlanHistory plans, Instant now)
{
    public static readonly IReadOnlyList<string> Columns = ["channel", "time", "value", "unit"];

    static readonly Instant earliest = Instant.FromUtc(2000, 1, 1, 0, 0);
    static readonly Duration futureTolerance = Duration.FromMinutes(2);

    /// <exception cref="CsvFileException">A column is missing.</exception>
    public static void CheckHeader(CsvRows rows)
    {
        foreach (var column in Columns.SkipLast(1))
            if (!rows.Has(column)) throw new CsvFileException($"{rows.Name}, line 1: the column '{column}' is missing; the header is {string.Join(',', Columns)}");
        if (rows.Columns.Except(Columns, StringComparer.OrdinalIgnoreCase).FirstOrDefault() is { } strange)
            throw new CsvFileException($"{rows.Name}, line 1: the column '{Shown.Short(strange)}' is unknown; the header is {string.Join(',', Columns)}");
    }

    /// <returns>The reading, or why the row is none.</returns>
    public (ReadingLine Line, string? Problem) Of(CsvRows row)
    {
        if (row.Problem is { } broken) return (default, broken);
        if (row["channel"] is not { } name) return (default, "the channel is missing: write APPLIANCE/CHANNEL");
        var (at, problem) = StudioTime.Parse(row["time"], plan.Zone);
        if (problem is not null) return (default, problem);
        if (at > now + futureTolerance) return (default, $"'{row["time"]}' lies in the future");
        if (at < earliest) return (default, $"'{row["time"]}' is before 2000: check the year");
        if (plans.Channel(WithoutSite(name), at) is not { } channel)
            return (default, $"there is no channel '{Shown.Short(name)}': describe it in the configuration, or name one that is there as APPLIANCE/CHANNEL");
        if (row["value"] is not { } text) return (default, "the value is missing: leave the row out where nothing was measured");
        var value = WireValue.OfText(row.HasDecimalComma ? text.Replace(',', '.') : text, channel.Quantity.IsState());
        if (value.Problem is { } wrong) return (default, wrong);
        // What an export wrote of a corrected temperature beside it.
        if (row["unit"] == Quantities.AsRead && channel.Quantity == Quantity.Temperature)
            return (new ReadingLine(channel, Quantities.AsRead, at, new ImportedRow(at.ToMicroseconds(), value.Number, ReadingMarks.Late | ReadingMarks.Imported, row.Line)), null);
        var stored = Ucum.ToStored(value.Number, row["unit"], channel);
        if (stored.Problem is { } unit) return (default, unit);
        var marks = ReadingMarks.Late | ReadingMarks.Imported;
        if (stored.Unit == channel.Quantity.CanonicalUnit()) marks |= Intake.Plausibility(channel, stored.Value);
        return (new ReadingLine(channel, stored.Unit, at, new ImportedRow(at.ToMicroseconds(), stored.Value, marks, row.Line)), null);
    }

    string WithoutSite(string id) => id.StartsWith(plan.Site + "/", StringComparison.Ordinal) ? id[(plan.Site.Length + 1)..] : id;
}
