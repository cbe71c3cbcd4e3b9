using HotShop.Monitor.Store;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.History.Figures;

/// <summary>What was said of days when they were over, as rows.</summary>
static class StatedFigures
{
    /// <summary>Days that nothing was said of are not there.</summary>
    public static IReadOnlyDictionary<(LocalDate Day, string Appliance, string Name), double> Read(IStoreReader store, LocalDate first, LocalDate last)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT day, appliance, name, value FROM stated_figure WHERE day >= $first AND day <= $last";
        command.Parameters.AddWithValue("$first", Text(first));
        command.Parameters.AddWithValue("$last", Text(last));
        using var rows = command.ExecuteReader();
        var all = new Dictionary<(LocalDate, string, string), double>();
        while (rows.Read()) all[(LocalDatePattern.Iso.Parse(rows.GetString(0)).Value, rows.GetString(1), rows.GetString(2))] = rows.GetDouble(3);
        return all;
    }

    public static LocalDate? LastDay(IStoreReader store)
    {
        using var connection = store.Open();
        using var command = connection.CreateCommand();
        command.CommandText = "SELECT max(day) FROM stated_figure";
        return command.ExecuteScalar() is string day ? LocalDatePattern.Iso.Parse(day).Value : null;
    }

    /// <summary>Takes the place of all that was said of those days.</summary>
    public static void Write(IReadOnlyList<DayFigure> figures, LocalDate first, LocalDate last, WriteScope scope)
    {
        scope.Execute("DELETE FROM stated_figure WHERE day >= $first AND day <= $last", ("$first", Text(first)), ("$last", Text(last)));
        foreach (var figure in figures)
            scope.Execute("INSERT INTO stated_figure VALUES ($day, $appliance, $name, $value, $now)",
                ("$day", Text(figure.Day)), ("$appliance", figure.Appliance), ("$name", figure.Name), ("$value", figure.Value), ("$now", scope.Now.ToMicroseconds()));
    }

    static string Text(LocalDate day) => LocalDatePattern.Iso.Format(day);
}
