namespace HotShop.Benchmarks;

/// <summary>What one call of a pure function takes, in processor time: what else runs on the machine counts little.</summary>
/// <param name="Nanoseconds">Median of the rounds.</param>
/// <param name="Quickest">Round with the fewest, nanoseconds.</param>
/// <param name="Bytes">Allocated, over all rounds.</param>
readonly record struct PerCall(double Nanoseconds, double Quickest, double Bytes)
{
    const int Rounds = 9;

    /// <param name="call">Told the number of the call; what it returns is summed, so that none is left out.</param>
    public static PerCall Of(Func<int, double> call, int calls = 200_000)
    {
        // Compiled for good, tables read, before the first round.
        var sum = 0.0;
        for (var i = 0; i < calls; i++) sum += call(i);
        var times = new double[Rounds];
        var before = GC.GetAllocatedBytesForCurrentThread();
        for (var round = 0; round < Rounds; round++)
        {
            var began = Environment.CpuUsage.TotalTime;
            for (var i = 0; i < calls; i++) sum += call(i);
            times[round] = (Environment.CpuUsage.TotalTime - began).TotalNanoseconds / calls;
        }
        var bytes = GC.GetAllocatedBytesForCurrentThread() - before;
        if (double.IsNaN(sum)) throw new InvalidOperationException("the function gave no number");
        Array.Sort(times);
        return new(times[Rounds / 2], times[0], (double)bytes / calls / Rounds);
    }

    public override string ToString() => FormattableString.Invariant($"{Nanoseconds,8:0} ns, quickest round {Quickest,6:0} ns, {Bytes,6:0.###} bytes");
}
