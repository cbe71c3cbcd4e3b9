using HotShop.Monitor.Readings;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>A source with its hours, in order, in the stretch of time [From, To) in which it and the gas were what they are here.</summary>
sealed record FuelLine(FuelSource Source, StudioGas Gas, Instant From, Instant To, IReadOnlyList<HourRow> Hours);

static class HoursInOrder
{
    /// <summary>Hours that share time with [from, to). Found by halving: a year asked by the hour must not look at every hour for each.</summary>
    public static IEnumerable<HourRow> Touching(this IReadOnlyList<HourRow> hours, Instant from, Instant to)
    {
        int low = 0, high = hours.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (hours[middle].Hour + Duration.FromHours(1) <= from) low = middle + 1;
            else high = middle;
        }
        for (var i = low; i < hours.Count && hours[i].Hour < to; i++) yield return hours[i];
    }
}
