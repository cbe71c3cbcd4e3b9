using HotShop.Physics.Melting;

namespace HotShop.Monitor.Pot;

/// <summary>Says why a figure of fuel per kilogram is not there, and what it needs.</summary>
static class MeltingWords
{
    public const string NeedsHolding = "it is what is burnt above holding: it needs the holding power";

    public const string NoGathers = "no gathers or tallies are logged: doors opened to gather count as holding";

    public static string NoHolding(IReadOnlyList<HeldHour> hours)
    {
        var measured = hours.Count(h => h.Hour.KilowattHours is not null);
        if (measured == 0) return "no hour of its fuel is measured: it needs a gas meter, flow or power channel of its own";
        var settled = hours.Count(HoldingFit.IsUsable);
        return $"it needs {HoldingFit.LeastHours} settled hours on {HoldingFit.LeastDays} days (setpoint unchanged and nothing charged for six hours, fuel measured, gathers logged); there are {settled} of {measured} measured ones";
    }

    public static string NoMelting(IReadOnlyList<MeltingDay> days)
    {
        var charged = days.Count(d => d.IsCharged);
        return $"it needs {MeltingLine.LeastDays} whole measured days, {MeltingLine.LeastChargedDays} of them with charges logged; there are {days.Count}, {charged} with charges";
    }

    public static string NoSlope(MeltingLine line) => line.Charged.Count < MeltingLine.LeastDaysForSlope
        ? $"it needs {MeltingLine.LeastDaysForSlope} days with charges; there are {line.Charged.Count}"
        : "the days' charges are too much alike: it needs days with clearly more and less glass";
}
