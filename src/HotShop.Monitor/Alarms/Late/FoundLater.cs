using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Alarms.Late;

/// <summary>
/// Notes readings that came too late to ring: a device's backlog from 02:00 that arrives at 06:00 wakes nobody, but it is told in the morning, and what
/// broke a limit is told as such. Judged are alarms that one channel decides by itself: heat, gases, mains and lock-out. Flame, falling and drift need the
/// modes and set points of their moment, which are not kept for a late look.
/// </summary>
sealed class FoundLater(AlarmEngine engine, IStoreReader store) : IReadingStage
{
    readonly ILookup<string, AlarmDefinition> byChannel = engine.Definitions
        .Where(d => d.Channel is not null && Breaks(d) is not null).ToLookup(d => $"{d.Appliance}/{d.Channel}");

    public void React(IReadOnlyList<StoredReading> readings, WriteScope scope)
    {
        if (!readings.Any(IsLate)) return;
        foreach (var channel in readings.Where(IsLate).GroupBy(r => r.Channel))
        {
            var inOrder = channel.OrderBy(r => r.At).ToList();
            var join = channel.Key.LongestGap;
            foreach (var stretch in Stretches(inOrder, "", join, _ => true)) LateRows.Add(scope, stretch, join);
            foreach (var alarm in byChannel[channel.Key.Id])
                foreach (var stretch in Stretches(inOrder, alarm.Id, join, Breaks(alarm)!)) LateRows.Add(scope, stretch, join);
        }
    }

    /// <summary>What came late for a span, in order of time. An alarm is there only if it would have rung: two readings at least, for as long as its delay.</summary>
    public IReadOnlyList<(LateStretch Stretch, AlarmDefinition? Alarm)> Between(Instant from, Instant to)
    {
        using var connection = store.Open();
        var found = new List<(LateStretch, AlarmDefinition?)>();
        foreach (var stretch in LateRows.Between(connection, from, to))
        {
            if (stretch.Alarm.Length == 0) found.Add((stretch, null));
            else if (engine.Definitions.FirstOrDefault(d => d.Id == stretch.Alarm) is { } alarm && stretch.Count >= 2 && stretch.Until - stretch.From >= alarm.OnDelay) found.Add((stretch, alarm));
        }
        return found;
    }

    /// <summary>Retained values are last words, not backlog; a raw voltage is judged by the temperature made of it.</summary>
    static bool IsLate(StoredReading reading) => (reading.Marks & ReadingMarks.Late) != 0 && reading.IsCanonical && reading.IsPlausible;

    static IEnumerable<LateStretch> Stretches(List<StoredReading> inOrder, string alarm, Duration join, Func<double, bool> belongs)
    {
        LateStretch? open = null;
        foreach (var reading in inOrder)
        {
            if (!belongs(reading.Value))
            {
                if (open is not null) yield return open;
                open = null;
                continue;
            }
            var one = new LateStretch(reading.Channel.Id, alarm, reading.At, reading.At, reading.Value, reading.Value, 1, reading.ArrivedAt);
            if (open is not null && one.From - open.Until > join)
            {
                yield return open;
                open = null;
            }
            open = open?.With(one) ?? one;
        }
        if (open is not null) yield return open;
    }

    static Func<double, bool>? Breaks(AlarmDefinition alarm) => alarm.Kind switch
    {
        AlarmKinds.Overheat or AlarmKinds.CarbonMonoxide or AlarmKinds.CarbonMonoxideWarning or AlarmKinds.CombustibleGas or AlarmKinds.CombustibleGasWarning
            when alarm.Limit is { } limit => value => value > limit,
        AlarmKinds.MainsLost => value => value < 0.5,
        AlarmKinds.LockOut => value => value >= 0.5,
        _ => null,
    };
}
