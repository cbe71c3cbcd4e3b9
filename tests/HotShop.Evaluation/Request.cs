namespace HotShop.Evaluation;

/// <summary>What was asked for on the command line.</summary>
/// <param name="Seed">First seed; the others follow it.</param>
/// <param name="Count">Seeds, 1 or more.</param>
/// <param name="Days">Simulated days of each, 1 or more.</param>
sealed record Request(int Seed, int Count, int Days)
{
    public IEnumerable<int> Seeds => Enumerable.Range(Seed, Count);
}

/// <summary>A scorecard that can be asked for.</summary>
/// <param name="UsualCount">Seeds of the full figure.</param>
/// <param name="UsualDays">Days of the full figure.</param>
/// <param name="Judge">Runs the service against the hidden truth; tells each seed's line to the writer as it goes.</param>
sealed record Card(string Name, string Tells, int UsualCount, int UsualDays, Func<Request, TextWriter, Task<IReadOnlyList<Measure>>> Judge);
