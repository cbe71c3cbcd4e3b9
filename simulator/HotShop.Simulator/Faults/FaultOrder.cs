using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;

namespace HotShop.Simulator.Faults;

/// <summary>One fault: what, on which appliance, how long after the start, for how long.</summary>
public sealed partial record FaultOrder(FaultKind Kind, string Appliance, Duration After, Duration For)
{
    static readonly Dictionary<string, FaultKind> KindsByWord = Enum.GetValues<FaultKind>().ToDictionary(WordFor);

    /// <summary>The kinds as they are written on the command line.</summary>
    public static IEnumerable<string> Words => KindsByWord.Keys;

    /// <summary>`element-failed` for <see cref="FaultKind.ElementFailed"/>.</summary>
    public static string WordFor(FaultKind kind) => CapitalInside().Replace(kind.ToString(), "-$0").ToLowerInvariant();

    /// <summary>Reads `flame-out-with-gas@glory-hole-1+05:00/00:20`; hours may exceed 24.</summary>
    /// <returns>The order, or why the text is none and what to write instead.</returns>
    public static (FaultOrder? Order, string? Problem) Parse(string text)
    {
        var match = Form().Match(text);
        if (!match.Success) return (null, $"'{text}' is no fault: write KIND@APPLIANCE+HH:MM/HH:MM, such as flame-out-with-gas@glory-hole-1+05:00/00:20");
        if (!KindsByWord.TryGetValue(match.Groups["kind"].Value, out var kind))
            return (null, $"'{match.Groups["kind"].Value}' is no kind of fault: write one of {string.Join(", ", Words)}");
        var order = new FaultOrder(kind, match.Groups["appliance"].Value, Span(match, "after"), Span(match, "for"));
        return order.Problem() is { } problem ? (null, problem) : (order, null);
    }

    /// <summary>Why this order cannot be carried out; <see langword="null"/> when it can.</summary>
    public string? Problem()
    {
        var wanted = AppliancesFor(Kind);
        if (!wanted.Contains(Appliance)) return $"{WordFor(Kind)} cannot happen to '{Appliance}': name one of {string.Join(", ", wanted)}";
        return After < Duration.Zero || For <= Duration.Zero ? $"{WordFor(Kind)}@{Appliance}: the start must not be negative and the length must be above zero" : null;
    }

    static string[] AppliancesFor(FaultKind kind) => kind switch
    {
        FaultKind.FlameOutWithGas or FaultKind.BurnerCycling => [Quillmere.Furnace, Quillmere.GloryHole],
        FaultKind.GasSupplyLost => [Quillmere.Furnace, Quillmere.GloryHole, Quillmere.Shop],
        FaultKind.ElementFailed => [Quillmere.FirstAnnealer, Quillmere.SecondAnnealer],
        FaultKind.PowerCut => [Quillmere.Shop],
        FaultKind.ColdCharge => [Quillmere.Furnace],
        FaultKind.SilentDevice => [.. Quillmere.Appliances, Quillmere.Bench],
        FaultKind.HeldBackDevice => [.. Quillmere.Appliances],
        _ => [Quillmere.Furnace, Quillmere.GloryHole, Quillmere.FirstAnnealer, Quillmere.SecondAnnealer],
    };

    static Duration Span(Match match, string name) =>
        Duration.FromHours(int.Parse(match.Groups[name + "Hours"].ValueSpan, CultureInfo.InvariantCulture))
        + Duration.FromMinutes(int.Parse(match.Groups[name + "Minutes"].ValueSpan, CultureInfo.InvariantCulture));

    [GeneratedRegex(@"(?<!^)[A-Z]")]
    private static partial Regex CapitalInside();

    [GeneratedRegex(@"^(?<kind>[a-z-]+)@(?<appliance>[a-z0-9-]+)\+(?<afterHours>\d{1,4}):(?<afterMinutes>[0-5]\d)/(?<forHours>\d{1,4}):(?<forMinutes>[0-5]\d)$")]
    private static partial Regex Form();
}
