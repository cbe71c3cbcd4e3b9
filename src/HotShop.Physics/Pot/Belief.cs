namespace HotShop.Physics.Pot;

/// <summary>Mean and covariance of the glass in the pot and of the studio's habits. Element 0 is the mass, kg; the others are
/// relative.</summary>
internal sealed class Belief
{
    double[] mean;
    double[,] covariance;

    public Belief(int size) => (mean, covariance) = (new double[size], new double[size, size]);

    Belief(Belief other) => (mean, covariance) = ((double[])other.mean.Clone(), (double[,])other.covariance.Clone());

    public int Size => mean.Length;

    public double Mean(int i) => mean[i];

    public double Covariance(int i, int j) => covariance[i, j];

    public double Variance(int i) => covariance[i, i];

    public Belief Copy() => new(this);

    /// <summary>Forgets what was known of one element.</summary>
    public void Reset(int i, double value, double standardDeviation)
    {
        for (var j = 0; j < Size; j++) covariance[i, j] = covariance[j, i] = 0;
        (mean[i], covariance[i, i]) = (value, standardDeviation * standardDeviation);
    }

    /// <summary>Adds an element of mean 0 that depends on nothing.</summary>
    public int Append(double standardDeviation)
    {
        var (old, size) = (covariance, Size);
        Array.Resize(ref mean, size + 1);
        covariance = new double[size + 1, size + 1];
        for (var i = 0; i < size; i++)
            for (var j = 0; j < size; j++) covariance[i, j] = old[i, j];
        Reset(size, 0, standardDeviation);
        return size;
    }

    public void AddVariance(int i, double variance) => covariance[i, i] += variance;

    /// <summary>Changes the mass by an amount that depends on the habits: its slope by each of them is given, and its own
    /// variance.</summary>
    public void ShiftMass(double kilograms, ReadOnlySpan<double> slopes, double variance)
    {
        Span<double> carried = stackalloc double[Size];
        var spread = 0.0;
        for (var i = 0; i < Size; i++)
        {
            carried[i] = Row(i, slopes);
            spread += slopes[i] * carried[i];
        }
        mean[0] += kilograms;
        covariance[0, 0] += 2 * carried[0] + spread + variance;
        for (var j = 1; j < Size; j++) covariance[0, j] = covariance[j, 0] = covariance[0, j] + carried[j];
    }

    /// <summary>Variance of a quantity with these slopes.</summary>
    public double VarianceOf(ReadOnlySpan<double> slopes)
    {
        var variance = 0.0;
        for (var i = 0; i < Size; i++) variance += slopes[i] * Row(i, slopes);
        return variance;
    }

    /// <summary>Takes in a measurement: what it was above what was expected, its slope by each element, and its variance
    /// (Kalman's update).</summary>
    public void Measure(double innovation, ReadOnlySpan<double> slopes, double variance)
    {
        Span<double> carried = stackalloc double[Size];
        for (var i = 0; i < Size; i++) carried[i] = Row(i, slopes);
        var total = variance;
        for (var i = 0; i < Size; i++) total += slopes[i] * carried[i];
        for (var i = 0; i < Size; i++) mean[i] += carried[i] / total * innovation;
        Reduce(carried, 1 / total);
    }

    /// <summary>Moves the mass to a new mean and variance, and everything that depends on it along.</summary>
    public void MoveMass(double newMean, double newVariance)
    {
        var (change, old) = (newMean - mean[0], covariance[0, 0]);
        Span<double> carried = stackalloc double[Size];
        for (var i = 0; i < Size; i++) carried[i] = covariance[0, i];
        for (var i = 0; i < Size; i++) mean[i] += carried[i] / old * change;
        Reduce(carried, (1 - newVariance / old) / old);
    }

    double Row(int i, ReadOnlySpan<double> slopes)
    {
        var sum = 0.0;
        for (var j = 0; j < Size; j++) sum += covariance[i, j] * slopes[j];
        return sum;
    }

    /// <summary>P − factor · v vᵀ, kept symmetric to the last bit.</summary>
    void Reduce(ReadOnlySpan<double> v, double factor)
    {
        for (var i = 0; i < Size; i++)
        {
            covariance[i, i] = Math.Max(0, covariance[i, i] - factor * v[i] * v[i]);
            for (var j = i + 1; j < Size; j++) covariance[j, i] = covariance[i, j] -= factor * v[i] * v[j];
        }
    }
}
