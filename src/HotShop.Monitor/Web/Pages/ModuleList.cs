namespace HotShop.Monitor.Web.Pages;

/// <summary>
/// The scripts each page will ask for, so that a phone on a slow line fetches them in one round trip instead of finding
/// them one behind the other.
/// </summary>
internal static class ModuleList
{
    static readonly string[] Shared = ["api", "clock", "live", "shop", "units"];

    static readonly Dictionary<string, string[]> Own = new()
    {
        ["floor"] =
        [
            "appliance-sheet", "cost", "entry-queue", "fire", "forecast", "glow", "history", "lane", "piece-annealer", "piece-furnace", "piece-glory-hole", "piece-oven",
            "pot-facts", "room", "saying", "story", "strip", "svg", "thread", "trouble",
        ],
        ["pot"] =
        [
            "entry-queue", "forecast", "glow", "lane", "offline", "pot-bench", "pot-dots", "pot-entry", "pot-facts", "pot-fields", "pot-glass", "pot-log", "pot-memory", "pot-note", "pot-section", "pot-sheets",
            "pot-strip", "pot-tally", "pot-undo", "pot-words", "story", "svg",
        ],
        ["meters"] = ["entry-queue", "meter-dial", "meter-entry", "meter-photo", "meter-strip", "meter-words", "svg"],
        ["morning"] = ["entry-queue"],
        ["alarms"] = ["entry-queue", "saying", "svg", "trouble"],
        ["health"] = ["saying", "svg"],
        ["setup"] = ["saying", "svg", "wiring", "wiring-form"],
    };

    public static IEnumerable<string> Of(string page) => [.. Shared, .. Own.GetValueOrDefault(page, [])];
}
