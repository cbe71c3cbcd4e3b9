using NodaTime;

namespace HotShop.Monitor.Modes;

/// <summary>What an appliance is meant to be doing.</summary>
public enum Mode { Off, HeatUp, Holding, Charging, Working, CoolDown, OutOfService }

/// <summary>A mode in force: since when, and who said so ("timetable" for the clock).</summary>
public sealed record ModeInForce(Mode Mode, Instant Since, string Who);

public static class ModeNames
{
    static readonly (Mode Mode, string Name)[] All =
    [
        (Mode.Off, "off"), (Mode.HeatUp, "heat-up"), (Mode.Holding, "holding"), (Mode.Charging, "charging"),
        (Mode.Working, "working"), (Mode.CoolDown, "cool-down"), (Mode.OutOfService, "out-of-service"),
    ];

    public static IEnumerable<string> Names => All.Select(m => m.Name);

    public static string NameOf(this Mode mode) => All[(int)mode].Name;

    public static Mode? Parse(string? name)
    {
        foreach (var known in All) if (known.Name == name) return known.Mode;
        return null;
    }

    /// <summary>The mode asks for a fire: its absence is a failure, not an evening.</summary>
    public static bool WantsFire(this Mode mode) => mode is Mode.HeatUp or Mode.Holding or Mode.Charging or Mode.Working;
}

/// <summary>The modes in force now.</summary>
public interface IModes
{
    ModeInForce Of(string appliance);
}
