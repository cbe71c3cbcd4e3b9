namespace HotShop.Physics.Uncertainty;

/// <summary>How well the energy of a metered gas volume is known: limits ±, of which nothing else is known.</summary>
/// <param name="MeterPercent">The meter's class, % of what it counted; see <see cref="MeterClass.GasLimitPercent"/>.</param>
/// <param name="LineKelvin">Gas temperature at the meter, K: a line in a shop differs from what was assumed (common practice).</param>
/// <param name="LinePascals">Pressure at the meter, Pa: the regulator's set point and the weather (common practice).</param>
/// <param name="CompressibilityPercent">What the ideal gas law leaves out below 10 psi gauge, %.</param>
/// <param name="HeatingValuePercent">Of the heating value, %: a bill's is the mean of a month and an area, so 2 % (common practice); 1 % where the supplier
/// states it day by day.</param>
public sealed record GasDoubts(
    double MeterPercent = 1.5, double LineKelvin = 5, double LinePascals = 500, double CompressibilityPercent = 0.05, double HeatingValuePercent = 2)
{
    public double MeterPercent { get; init; } = Require.NotNegative(MeterPercent);

    public double LineKelvin { get; init; } = Require.NotNegative(LineKelvin);

    public double LinePascals { get; init; } = Require.NotNegative(LinePascals);

    public double CompressibilityPercent { get; init; } = Require.NotNegative(CompressibilityPercent);

    public double HeatingValuePercent { get; init; } = Require.NotNegative(HeatingValuePercent);
}
