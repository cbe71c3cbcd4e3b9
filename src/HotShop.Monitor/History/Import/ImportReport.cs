using NodaTime;

namespace HotShop.Monitor.History.Import;

/// <param name="IsDryRun">Say what would happen; change nothing.</param>
/// <param name="Replace">Rows that say something else than what is stored take its place.</param>
public sealed record ImportChoices(bool IsDryRun, bool Replace);

/// <summary>A row that cannot be taken: on which line, what is wrong, what to do.</summary>
public sealed record RowProblem(long Line, string Reason);

/// <summary>What an import did, or would do. With a problem nothing was imported.</summary>
/// <param name="Rows">Rows read.</param>
/// <param name="Added">Rows that were not there.</param>
/// <param name="Known">Rows that were there with the same value.</param>
/// <param name="Replaced">Rows that took the place of another value.</param>
/// <param name="Conflicts">Rows that say something else than what is stored, which stays.</param>
/// <param name="Closed">Rows of hours that are added up already, and whose readings are no longer kept: left out.</param>
/// <param name="ProblemCount">All of them; <paramref name="Problems"/> lists the first <see cref="MostListed"/>.</param>
public sealed record ImportReport(
    string Kind, bool IsDryRun, long Rows, long Added, long Known, long Replaced, long Conflicts, long Closed, Instant? First, Instant? Last,
    long ProblemCount, IReadOnlyList<RowProblem> Problems, IReadOnlyList<RowProblem> ConflictList)
{
    public const int MostListed = 1000;

    public bool IsTaken => ProblemCount == 0;
}

/// <summary>Counts what becomes of the rows of one file.</summary>
sealed class ImportTally
{
    readonly List<RowProblem> problems = [], conflicts = [];
    Instant? first, last;

    public long Rows { get; set; }
    public long Added { get; set; }
    public long Known { get; set; }
    public long Replaced { get; set; }
    public long Conflicts { get; private set; }
    public long Closed { get; set; }
    public long ProblemCount { get; private set; }

    public void Problem(long line, string reason)
    {
        ProblemCount++;
        if (problems.Count < ImportReport.MostListed) problems.Add(new RowProblem(line, reason));
    }

    public void Conflict(long line, string what)
    {
        Conflicts++;
        if (conflicts.Count < ImportReport.MostListed) conflicts.Add(new RowProblem(line, what));
    }

    public void Saw(Instant at)
    {
        if (first is null || at < first) first = at;
        if (last is null || at > last) last = at;
    }

    public ImportReport Report(string kind, bool isDryRun) =>
        new(kind, isDryRun, Rows, Added, Known, Replaced, Conflicts, Closed, first, last, ProblemCount, problems, conflicts);
}
