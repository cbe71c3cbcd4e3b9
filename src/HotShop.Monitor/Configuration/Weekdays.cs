using NodaTime;

namespace HotShop.Monitor.Configuration;

/// <summary>Days of the week as people write them: <c>daily</c>, <c>mon-fri</c>, <c>tue,thu,sat-sun</c>.</summary>
public static class Weekdays
{
    static readonly string[] Short = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];

    /// <returns>Null where the text names no days.</returns>
    public static IReadOnlySet<IsoDayOfWeek>? Parse(string text)
    {
        if (text == "daily") return Enum.GetValues<IsoDayOfWeek>().Where(d => d != IsoDayOfWeek.None).ToHashSet();
        var days = new HashSet<IsoDayOfWeek>();
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            var ends = part.Split('-', StringSplitOptions.TrimEntries);
            var first = Array.IndexOf(Short, ends[0]);
            var last = Array.IndexOf(Short, ends[^1]);
            if (first < 0 || last < 0 || ends.Length > 2) return null;
            for (var day = first; ; day = (day + 1) % 7)
            {
                days.Add((IsoDayOfWeek)(day + 1));
                if (day == last) break;
            }
        }
        return days;
    }
}
