using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>Reads a time of RFC 3339 (section 5.6): date, <c>T</c>, time of day, and an offset or <c>Z</c>, because a local time without its offset names two instants.</summary>
/// <remarks>
/// <c>t</c> and <c>z</c> are read as well (5.6, note). <c>-00:00</c> is UTC (4.3). A leap second, <c>23:59:60</c> UTC, is read as the second after it,
/// as the clocks of most devices do (5.7). Digits beyond the nanosecond are cut off. Years 0001 to 9998.
/// </remarks>
static class StrictTime
{
    /// <returns>Null where the text is no such time.</returns>
    public static Instant? Parse(ReadOnlySpan<char> text)
    {
        if (text.Length < 20 || text[4] != '-' || text[7] != '-' || text[10] is not ('T' or 't') || text[13] != ':' || text[16] != ':') return null;
        if (Number(text[..4]) is not { } year || Number(text[5..7]) is not { } month || Number(text[8..10]) is not { } day) return null;
        if (Number(text[11..13]) is not { } hour || Number(text[14..16]) is not { } minute || Number(text[17..19]) is not { } second) return null;
        if (year is < 1 or > 9998 || month is < 1 or > 12 || day < 1 || day > CalendarSystem.Iso.GetDaysInMonth(year, month)) return null;
        if (hour > 23 || minute > 59 || second > 60) return null;

        var rest = text[19..];
        if (Fraction(ref rest) is not { } nanoseconds || OffsetMinutes(rest) is not { } offsetMinutes) return null;
        var minuteStart = Instant.FromUtc(year, month, day, hour, minute) - Duration.FromMinutes(offsetMinutes);
        if (second == 60 && minuteStart.InUtc().TimeOfDay != new LocalTime(23, 59)) return null;
        return minuteStart + Duration.FromSeconds(second) + Duration.FromNanoseconds(nanoseconds);
    }

    static int? Number(ReadOnlySpan<char> digits)
    {
        var number = 0;
        foreach (var digit in digits)
        {
            if (!char.IsAsciiDigit(digit)) return null;
            number = number * 10 + (digit - '0');
        }
        return number;
    }

    /// <summary>Nanoseconds of <c>.123</c>, 0 where there is no fraction, null where the point has no digits; moves on behind it.</summary>
    static long? Fraction(ref ReadOnlySpan<char> rest)
    {
        if (rest[0] != '.') return 0;
        var length = 1;
        long nanoseconds = 0;
        while (length < rest.Length && char.IsAsciiDigit(rest[length]))
        {
            if (length <= 9) nanoseconds = nanoseconds * 10 + (rest[length] - '0');
            length++;
        }
        if (length == 1) return null;
        for (var digit = length; digit <= 9; digit++) nanoseconds *= 10;
        rest = rest[length..];
        return nanoseconds;
    }

    static int? OffsetMinutes(ReadOnlySpan<char> text)
    {
        if (text is "Z" or "z") return 0;
        if (text.Length != 6 || text[0] is not ('+' or '-') || text[3] != ':') return null;
        if (Number(text[1..3]) is not { } hours || Number(text[4..]) is not { } minutes || hours > 23 || minutes > 59) return null;
        return (text[0] == '-' ? -1 : 1) * (hours * 60 + minutes);
    }
}
