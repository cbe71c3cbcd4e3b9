namespace HotShop.Physics.Energy;

/// <summary>Sums depend on order: samples that are not sorted by time, or not numbers, are a programmer's mistake.</summary>
internal static class SampleOrder
{
    public static void Check(IReadOnlyList<Sample> samples, int i)
    {
        if (!double.IsFinite(samples[i].Value))
            throw new ArgumentException($"sample {i} at {samples[i].At} is not a finite number", nameof(samples));
        if (i > 0 && samples[i].At < samples[i - 1].At)
            throw new ArgumentException($"sample {i} at {samples[i].At} comes before sample {i - 1}: sort by time", nameof(samples));
    }
}
