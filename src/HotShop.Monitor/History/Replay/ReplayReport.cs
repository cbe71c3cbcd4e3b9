using NodaTime;

namespace HotShop.Monitor.History.Replay;

/// <summary>One thing that comes out differently now: what, when, what was kept and what is computed.</summary>
public sealed record Difference(string What, Instant At, string Was, string Now);

/// <summary>How one kind of derived rows came out.</summary>
/// <param name="Checked">Computed again.</param>
/// <param name="Differing">Of them other than what was kept; <paramref name="Differences"/> lists the first <see cref="MostListed"/>.</param>
/// <param name="Left">Not computed, with the reason in the report's words: no readings of them are kept any more, or they wait to be computed anyway.</param>
public sealed record ReplayPart(string Name, long Checked, long Differing, long Left, IReadOnlyList<Difference> Differences)
{
    public const int MostListed = 200;
}

/// <summary>What a replay found, part by part.</summary>
/// <param name="Changes">Of the configuration within the span.</param>
/// <param name="Seconds">It took.</param>
/// <param name="IsApplied">The derived rows were written again.</param>
public sealed record ReplayReport(Instant From, Instant To, IReadOnlyList<Difference> Changes, IReadOnlyList<ReplayPart> Parts, double Seconds, bool IsApplied)
{
    public long Differing => Parts.Sum(p => p.Differing);
}

/// <summary>Counts and lists the differences of one part.</summary>
sealed class PartTally(string name)
{
    readonly List<Difference> list = [];
    long count;

    public long Checked { get; set; }
    public long Left { get; set; }

    public void Differs(string what, Instant at, string was, string now)
    {
        count++;
        if (list.Count < ReplayPart.MostListed) list.Add(new Difference(what, at, was, now));
    }

    public ReplayPart Part => new(name, Checked, count, Left, list);
}
