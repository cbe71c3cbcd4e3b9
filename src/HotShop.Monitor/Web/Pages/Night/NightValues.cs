using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Web.Pages.Night;

/// <summary>Which channel tells the story of an alarm, and its values in words.</summary>
internal static class NightValues
{
    static readonly string[] KnownBy = ["crown", "glass", "chamber", "middle", "shelf"];

    /// <summary>The channel of the alarm if it has a course to draw, else the temperature its appliance is known by; null where there is neither.</summary>
    public static ChannelPlan? Channel(AppliancePlan? appliance, string? channel)
    {
        if (appliance is null) return null;
        var own = appliance.Channels.FirstOrDefault(c => c.Name == channel || c.Id == channel);
        if (own is not null && !own.Quantity.IsState()) return own;
        var hot = appliance.Channels.Where(c => c.Quantity == Quantity.Temperature).ToList();
        return KnownBy.Select(name => hot.Find(c => c.Name == name)).FirstOrDefault(c => c is not null) ?? hot.FirstOrDefault();
    }

    /// <summary>In both systems where there are two: "1148 °C, 2098 °F".</summary>
    public static string Words(Quantity quantity, double value) => quantity switch
    {
        Quantity.Temperature or Quantity.Setpoint => Text($"{value:0} °C, {value * 1.8 + 32:0} °F"),
        Quantity.GasFlow => Text($"{value:0.0} m³/h, {value * 35.3147:0} ft³/h"),
        Quantity.Pressure => Text($"{value / 100:0.0} mbar, {value / 249.089:0.0} in w.c."),
        Quantity.CarbonMonoxide => Text($"{value:0} ppm"),
        Quantity.CombustibleGas => Text($"{value:0} % LEL"),
        Quantity.Power => Text($"{value:0.0} kW"),
        _ => Text($"{value:0.##} {quantity.CanonicalUnit()}"),
    };

    /// <summary>An age as one would say it: "14 min ago".</summary>
    public static string Ago(NodaTime.Duration age) => age.TotalMinutes switch
    {
        < 1.5 => "just now",
        < 90 => Text($"{age.TotalMinutes:0} min ago"),
        < 36 * 60 => Text($"{age.TotalHours:0} h ago"),
        _ => Text($"{age.TotalDays:0} days ago"),
    };

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
