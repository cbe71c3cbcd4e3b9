namespace HotShop.Physics.Pot;

/// <summary>Nominal masses of gathers by size, kg. Common practice: every studio's differ by a fifth and more, and the estimator
/// learns them.</summary>
public static class GatherSizes
{
    public const string Small = "small", Medium = "medium", Large = "large";

    /// <summary>Small 0.15, medium 0.4, large 0.8 kg. Common practice.</summary>
    public static IReadOnlyDictionary<string, double> NominalKilograms { get; } = new Dictionary<string, double>
    {
        [Small] = 0.15,
        [Medium] = 0.4,
        [Large] = 0.8,
    };
}
