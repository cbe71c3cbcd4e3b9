using System.Globalization;
using System.Text;

namespace HotShop.Checks;

/// <summary>All checks as one page for people: docs/checks.md.</summary>
/// <remarks>
/// Ours is rounded to one digit more than the tolerance can tell apart, so the page is the same on every processor: sums and
/// exponentials differ in their last bits.
/// </remarks>
public static class ChecksTable
{
    /// <summary>Where it is kept, from the root of the repository.</summary>
    public const string Path = "docs/checks.md";

    /// <summary>What writes it anew.</summary>
    public const string Command = "dotnet run --project tests/HotShop.Evaluation -c Release -- numbers";

    /// <summary>More digits than these are noise in a double.</summary>
    const int MostDigits = 12;

    public static string Markdown(IReadOnlyList<Topic> topics)
    {
        ArgumentNullException.ThrowIfNull(topics);
        var page = new StringBuilder();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Published values and ours

            What `HotShop.Physics` computes beside what texts, standards and certified data sets print. A test runs every row. This page is generated
            (`{Command}`), and a test compares it with what would be generated.

            Standing says how a value came here. **Read**: in a text that states it, or in a copy of one. **Computed**: apart from this library, by other code,
            from inputs that were read. **Memory**: no text was found that confirms it. The tolerance is half of the last printed digit wherever the source
            allows that. How the values are computed, and over which range: [numbers.md](numbers.md). How it is measured what these checks nail:
            [mutation.md](mutation.md).

            | topic | checks | read | computed | memory |
            | --- | ---: | ---: | ---: | ---: |

            """);
        foreach (var topic in topics) Summary(page, $"[{topic.Name}](#{Anchor(topic.Name)})", topic.Checks);
        Summary(page, "**all**", [.. topics.SelectMany(t => t.Checks)]);
        foreach (var topic in topics) Table(page, topic);
        return page.ToString();
    }

    /// <summary>A value with one decimal more than the tolerance can tell apart, at most twelve digits.</summary>
    public static string Rounded(double value, double tolerance)
    {
        if (!double.IsFinite(value)) return value.ToString(CultureInfo.InvariantCulture);
        var decimals = tolerance > 0 ? (int)Math.Floor(-Math.Log10(tolerance)) + 1 : MostDigits;
        var leading = value == 0 ? 0 : (int)Math.Floor(Math.Log10(Math.Abs(value)));
        // First to twelve digits: a value that is exactly half in print must not fall to either side by its last bit.
        var steady = double.Parse(value.ToString("E" + (MostDigits - 1), CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        decimals = Math.Min(decimals, MostDigits - 1 - leading);
        if (decimals <= 9 && leading < 9) return (Math.Round((decimal)steady, Math.Max(0, decimals), MidpointRounding.AwayFromZero) + 0m).ToString("F" + Math.Max(0, decimals), CultureInfo.InvariantCulture);
        return steady.ToString("0." + new string('0', Math.Clamp(leading + decimals, 0, MostDigits - 1)) + "e+0", CultureInfo.InvariantCulture);
    }

    static void Summary(StringBuilder page, string name, IReadOnlyList<Check> checks) =>
        page.Append(CultureInfo.InvariantCulture,
            $"| {name} | {checks.Count} | {checks.Count(c => c.Standing == Standing.Read)} | {checks.Count(c => c.Standing == Standing.Computed)} | {checks.Count(c => c.Standing == Standing.Memory)} |\n");

    static void Table(StringBuilder page, Topic topic)
    {
        page.Append(CultureInfo.InvariantCulture, $"\n## {topic.Name}\n\n| case | published | unit | ours | difference | tolerance | source | standing |\n| --- | ---: | --- | ---: | ---: | ---: | --- | --- |\n");
        foreach (var check in topic.Checks)
        {
            var ours = Rounded(check.Ours(), check.Tolerance);
            var difference = Rounded(double.Parse(ours, CultureInfo.InvariantCulture) - check.Expected, check.Tolerance);
            page.Append(CultureInfo.InvariantCulture, $"| {Cell(check.What)} | {check.Published} | {Cell(check.Unit)} | {ours} | {difference} | {check.Tolerance:G3} | {Cell(check.Source)} | {check.Standing} |\n");
        }
    }

    static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).ReplaceLineEndings(" ");

    static string Anchor(string heading) => heading.ToLowerInvariant().Replace(' ', '-');
}
