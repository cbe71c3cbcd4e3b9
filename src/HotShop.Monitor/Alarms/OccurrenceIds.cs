using System.Globalization;
using HotShop.Monitor.Store;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>An occurrence is its alarm and its start: the same start is the same occurrence, however often it is found.</summary>
internal static class OccurrenceIds
{
    /// <returns>e.g. <c>furnace-1.overheat.crown~20260301T021405120000Z</c>: letters that need no escape in a path (RFC 3986, unreserved).</returns>
    public static string Of(string alarmId, Instant since) =>
        string.Create(CultureInfo.InvariantCulture, $"{alarmId}~{since.Whole().ToDateTimeUtc():yyyyMMdd'T'HHmmssffffff'Z'}");
}
