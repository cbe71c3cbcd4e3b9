using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Health;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>A night out of random numbers: each becomes something that can happen in the test studio.</summary>
static class Script
{
    static readonly (string Channel, double[] Values)[] Things =
    [
        ("furnace-1/crown", [1150, 1285, 1295, 1302, 1800]), ("furnace-1/flame", [0, 1]), ("furnace-1/call-for-heat", [0, 1]), ("furnace-1/lock-out", [0, 0, 1]),
        ("glory-hole-1/flame", [0, 1]), ("annealer-1/chamber", [495, 470, 300]), ("annealer-1/setpoint", [495, 480, 200]), ("shop/mains", [1, 1, 0]),
        ("shop/carbon-monoxide", [0, 33, 40, 80]), ("shop/burner-fault", [0, 1]), ("furnace-2/crown", [1150, 1100, 1050]), ("furnace-2/gas-flow", [2, 1]),
    ];

    static readonly string[] Appliances = ["furnace-1", "glory-hole-1", "furnace-2", "annealer-1"];

    /// <summary>The step that a number means; acknowledging takes whatever stands.</summary>
    public static AlarmEvent? Step(int number, ref Instant now, StudioMemory memory)
    {
        var draw = new Draw((uint)number);
        now += Duration.FromSeconds(1 + draw.Below(draw.Below(4) == 0 ? 900 : 30));
        switch (draw.Below(12))
        {
            case 0: return new AlarmEvent.Tick(now);
            case 1: return new AlarmEvent.ModeSet(Appliances[draw.Below(Appliances.Length)], new ModeInForce((Mode)draw.Below(7), now, "somebody"), now);
            case 2: return new AlarmEvent.PartReported(new PartHealth(draw.Below(2) == 0 ? HealthBoard.Broker : HealthBoard.Disk, draw.Below(2) == 0, "trouble", now));
            case 3:
                var isSilence = draw.Below(3) == 0;
                var standing = memory.Alarms.Where(a => a.Occurrence is not null && a.Occurrence.Kind == "silent" == isSilence).Select(a => a.Occurrence!.Id).Order(StringComparer.Ordinal).ToList();
                return standing.Count == 0 ? null : new AlarmEvent.Acknowledged(standing[draw.Below(standing.Count)], "Ida", now);
            default:
                var (channel, values) = Things[draw.Below(Things.Length)];
                var value = values[draw.Below(values.Length)];
                return new AlarmEvent.Sample(channel, now - Duration.FromSeconds(draw.Below(3)), value, value < 1500, now);
        }
    }

    /// <summary>Everything in a memory, as text that can be compared.</summary>
    public static string Told(StudioMemory memory) => string.Join('\n',
        memory.Alarms.Select(a => $"{a with { Rule = a.Rule with { Trend = null } }} {string.Join(' ', a.Rule.Trend ?? [])}")
            .Concat(memory.Channels.Select(c => c.ToString())));

    /// <summary>Small numbers out of one: the same number, the same draws.</summary>
    sealed class Draw(uint number)
    {
        ulong state = number * 0x9E3779B97F4A7C15UL + 1;

        public int Below(int count)
        {
            state = state * 6364136223846793005UL + 1442695040888963407UL;
            return (int)((state >> 33) % (ulong)count);
        }
    }
}
