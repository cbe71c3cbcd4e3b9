namespace HotShop.Physics.Combustion;

/// <summary>How well a flue gas is known: limits ±, of which nothing else is known.</summary>
/// <param name="OxygenPercent">Oxygen reading, points of per cent, 0 to 2. Default 0.3: the limit of EN 50379-2 for portable analysers, from memory.</param>
/// <param name="FlueKelvin">Temperature of the gas where it leaves the chamber, K. Default 25: a bare couple in a flue sees cooler walls (common practice).</param>
/// <param name="AirKelvin">Temperature of the air for burning, K. Default 10 (common practice).</param>
/// <param name="BalancePercent">What the balance leaves out (moist air, argon, the gas being another than assumed), points of the gross heat. Default 0.8.</param>
public sealed record FlueDoubts(double OxygenPercent = 0.3, double FlueKelvin = 25, double AirKelvin = 10, double BalancePercent = 0.8)
{
    /// <summary>A probe that is further off tells nothing of excess air.</summary>
    const double MostOxygenPercent = 2;

    public double OxygenPercent { get; init; } = OxygenPercent is >= 0 and <= MostOxygenPercent
        ? OxygenPercent
        : throw new ArgumentOutOfRangeException(nameof(OxygenPercent), OxygenPercent, "expected 0 to 2 points");

    public double FlueKelvin { get; init; } = Require.NotNegative(FlueKelvin);

    public double AirKelvin { get; init; } = Require.NotNegative(AirKelvin);

    public double BalancePercent { get; init; } = Require.NotNegative(BalancePercent);
}
