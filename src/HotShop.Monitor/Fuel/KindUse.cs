using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Fuel;

/// <summary>What the studio used of one kind of energy in one step.</summary>
/// <param name="Budget">The sum, kWh, with all reasons why it may be off.</param>
/// <param name="Metered">The part of the total that meters and sensors counted, typed readings included.</param>
/// <param name="Coverage">Part of the time that they speak for; null where there is no meter of this kind.</param>
sealed record KindUse(IReadOnlyList<FuelShare> Shares, Budget Budget, Estimate Metered, double? Coverage, int Resets)
{
    /// <summary>The sum, kWh. By the hour nobody asks for the exact shape of its errors: the normal interval covers a little more than 95 %.</summary>
    public Estimate Total => new(Budget.Value, Budget.StandardUncertainty);

    public static readonly KindUse Nothing = new([], new Budget(0), Estimate.Exact(0), null, 0);
}
