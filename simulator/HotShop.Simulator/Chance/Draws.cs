namespace HotShop.Simulator.Chance;

/// <summary>
/// Random numbers that depend on the seed and on what they are for, and on nothing else: ordering a fault or sampling more often
/// must not change how big the next gather is. The generator is SplitMix64 (Steele, Lea and Flood, 2014), the same on every machine.
/// </summary>
internal sealed class Draws
{
    ulong state;
    double? spareNormal;

    public Draws(int seed, string purpose, long index = 0)
    {
        state = Mix((uint)seed + 0x9E3779B97F4A7C15UL);
        foreach (var letter in purpose) state = Mix(state ^ letter);
        state = Mix(state ^ (ulong)index);
    }

    /// <summary>From 0 inclusive to 1 exclusive.</summary>
    public double Unit()
    {
        state += 0x9E3779B97F4A7C15UL;
        return (Mix(state) >> 11) * (1.0 / (1UL << 53));
    }

    public double Between(double low, double high) => low + (high - low) * Unit();

    public int Whole(int low, int highInclusive) => low + (int)(Unit() * (highInclusive - low + 1));

    public bool Happens(double probability) => Unit() < probability;

    /// <summary>Normal with mean 0 (Marsaglia's polar method, which gives two at a time).</summary>
    public double Normal(double standardDeviation)
    {
        if (spareNormal is { } spare)
        {
            spareNormal = null;
            return spare * standardDeviation;
        }

        double x, y, square;
        do
        {
            x = 2 * Unit() - 1;
            y = 2 * Unit() - 1;
            square = x * x + y * y;
        }
        while (square >= 1 || square == 0);
        var scale = Math.Sqrt(-2 * Math.Log(square) / square);
        spareNormal = y * scale;
        return x * scale * standardDeviation;
    }

    static ulong Mix(ulong z)
    {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9UL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBUL;
        return z ^ (z >> 31);
    }
}
