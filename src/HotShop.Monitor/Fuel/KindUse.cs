using HotShop.Physics.Statistics;

namespace HotShop.Monitor.Fuel;

/// <summary>What the studio used of one kind of energy in one step.</summary>
/// <param name="MeteredKilowattHours">The part of the total that meters and sensors counted, typed readings included.</param>
/// <param name="Coverage">Part of the time that they speak for; null where there is no meter of this kind.</param>
sealed record KindUse(IReadOnlyList<FuelShare> Shares, Estimate Total, double MeteredKilowattHours, double? Coverage, int Resets)
{
    public static readonly KindUse Nothing = new([], Estimate.Exact(0), 0, null, 0);
}
