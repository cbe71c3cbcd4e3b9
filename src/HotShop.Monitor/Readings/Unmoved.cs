namespace HotShop.Monitor.Readings;

/// <summary>Arrivals of one series that have not been moved into the keyed table yet, by time: what refuses duplicates and finds neighbours without asking the store.</summary>
sealed class Unmoved
{
    readonly SortedList<long, (double Value, bool Counts)> byTime = [];

    public long? Newest => byTime.Count == 0 ? null : byTime.GetKeyAtIndex(byTime.Count - 1);

    public double? ValueAt(long micros) => byTime.TryGetValue(micros, out var row) ? row.Value : null;

    /// <param name="counts">Whether sums take the value: an implausible one is kept but never added up.</param>
    public void Add(long micros, double value, bool counts) => byTime[micros] = (value, counts);

    public bool Remove(long micros, out (double Value, bool Counts) row) => byTime.Remove(micros, out row);

    /// <summary>Times of the nearest values that count, nearest first.</summary>
    public IEnumerable<long> Before(long micros)
    {
        for (var i = FirstFrom(micros) - 1; i >= 0; i--) if (byTime.GetValueAtIndex(i).Counts) yield return byTime.GetKeyAtIndex(i);
    }

    public IEnumerable<long> After(long micros)
    {
        for (var i = FirstFrom(micros + 1); i < byTime.Count; i++) if (byTime.GetValueAtIndex(i).Counts) yield return byTime.GetKeyAtIndex(i);
    }

    /// <summary>Index of the first time at or after a moment.</summary>
    int FirstFrom(long micros)
    {
        int low = 0, high = byTime.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (byTime.GetKeyAtIndex(middle) < micros) low = middle + 1;
            else high = middle;
        }
        return low;
    }
}
