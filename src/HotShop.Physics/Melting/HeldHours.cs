using NodaTime;

namespace HotShop.Physics.Melting;

/// <summary>An hour with the temperature at which the furnace would have been held in it.</summary>
/// <param name="HeldCelsius">
/// Setpoint of the hour, or, while a charge is cooked and on the way between two setpoints, the one it was held at before;
/// <see langword="null"/> where nobody measures it.
/// </param>
/// <param name="IsSettled">Nothing melts in it and its walls have come to rest: apart from gathers, it burns what holding costs.</param>
public sealed record HeldHour(FurnaceHour Hour, double? HeldCelsius, bool IsSettled);

/// <summary>Tells holding from charging by the setpoint's course and the log of charges. Hours are common practice.</summary>
public static class HeldHours
{
    /// <summary>A setpoint that stays within so much is one level: a controller rounds.</summary>
    const double SameLevelKelvin = 1.5;

    /// <summary>Shorter levels are a pause on the way, not a temperature to hold at: the squeeze after a cook.</summary>
    const int ShortestLevelHours = 3;

    /// <summary>A level that begins around a charge and is so much hotter than before belongs to the charge: its cook.</summary>
    const double HotterForChargeKelvin = 5;

    const int CookBeginsBeforeHours = 2, CookBeginsAfterHours = 6;

    /// <summary>A charge has melted flat in 45 to 90 minutes; glass and walls need the rest of these hours to be as before.</summary>
    internal const int HoursToMelt = 6;

    /// <summary>The inner wall follows a change of setpoint in so many hours.</summary>
    internal const int HoursToSettle = 6;

    /// <param name="hours">In order; hours may be missing.</param>
    public static IReadOnlyList<HeldHour> Of(IReadOnlyList<FurnaceHour> hours)
    {
        ArgumentNullException.ThrowIfNull(hours);
        var held = new double?[hours.Count];
        var settled = new bool[hours.Count];
        double? last = null;
        foreach (var (start, end) in Levels(hours))
        {
            var celsius = Mean(hours, start, end);
            var isHeld = end - start >= ShortestLevelHours && !IsCook(hours, start, celsius, last);
            if (isHeld) last = celsius;
            for (var i = start; i < end; i++)
            {
                held[i] = last ?? celsius;
                settled[i] = isHeld && (start == 0 || hours[i].From - hours[start].From >= Duration.FromHours(HoursToSettle));
            }
        }

        var chargedAt = Instant.MinValue;
        for (var i = 0; i < hours.Count; i++)
        {
            if (hours[i].ChargedKilograms > 0) chargedAt = hours[i].From;
            settled[i] &= hours[i].From - chargedAt > Duration.FromHours(HoursToMelt);
        }
        return [.. hours.Select((hour, i) => new HeldHour(hour, held[i], settled[i]))];
    }

    /// <summary>Runs of hours at one setpoint, as start and end (not included); together they are all hours.</summary>
    static IEnumerable<(int Start, int End)> Levels(IReadOnlyList<FurnaceHour> hours)
    {
        var start = 0;
        for (var i = 1; i <= hours.Count; i++)
        {
            if (i < hours.Count && IsSameLevel(hours[start], hours[i]) && IsSameLevel(hours[i - 1], hours[i])) continue;
            yield return (start, i);
            start = i;
        }
    }

    static bool IsSameLevel(FurnaceHour before, FurnaceHour hour) => (before.SetpointCelsius, hour.SetpointCelsius) switch
    {
        ({ } a, { } b) => Math.Abs(a - b) <= SameLevelKelvin,
        (null, null) => true,
        _ => false,
    };

    static bool IsCook(IReadOnlyList<FurnaceHour> hours, int start, double? celsius, double? before)
    {
        if (celsius is not { } now || before is not { } then || now < then + HotterForChargeKelvin) return false;
        var (first, last) = (hours[start].From - Duration.FromHours(CookBeginsAfterHours), hours[start].From + Duration.FromHours(CookBeginsBeforeHours));
        for (var i = start; i >= 0 && hours[i].From >= first; i--) if (hours[i].ChargedKilograms > 0) return true;
        for (var i = start; i < hours.Count && hours[i].From <= last; i++) if (hours[i].ChargedKilograms > 0) return true;
        return false;
    }

    static double? Mean(IReadOnlyList<FurnaceHour> hours, int start, int end)
    {
        if (hours[start].SetpointCelsius is null) return null;
        var sum = 0.0;
        for (var i = start; i < end; i++) sum += hours[i].SetpointCelsius!.Value;
        return sum / (end - start);
    }
}
