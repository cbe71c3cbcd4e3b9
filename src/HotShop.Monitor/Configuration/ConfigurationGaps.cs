namespace HotShop.Monitor.Configuration;

/// <summary>What is in order, and still leaves a studio unwatched: said by <c>check</c> and at each start.</summary>
public static class ConfigurationGaps
{
    public static IReadOnlyList<string> Of(StudioConfiguration configuration)
    {
        var gaps = new List<string>();
        if (configuration.Notifications.Order.Count == 0)
            gaps.Add("nobody is called when something is wrong: name people, their phones and notifications.order");
        if (configuration.Notifications.PingUrl is null)
            gaps.Add("nobody outside would notice that this computer is dead: give notifications.pingUrl an address that somebody watches");
        if (configuration.Notifications.Order.Count > 0 && configuration.Http.PublicAddress is null && configuration.Http.Listen.StartsWith("127.", StringComparison.Ordinal))
            gaps.Add("links in messages lead to this computer alone: set http.publicAddress to an address that phones reach");
        if (!configuration.EmergencyNumbers.Any(n => n.Phone.Any(char.IsAsciiDigit)))
            gaps.Add("the night page has no number to call: write your gas emergency line under emergencyNumbers");
        if (configuration.Backup.Folder is null)
            gaps.Add("a broken disk would take all readings with it: give backup.folder a folder on another one");
        return gaps;
    }
}
