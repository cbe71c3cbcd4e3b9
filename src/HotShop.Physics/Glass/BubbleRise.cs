using NodaTime;

namespace HotShop.Physics.Glass;

/// <summary>How fast seeds rise while the glass is held hot. The gas's own mass is nothing beside the glass.</summary>
/// <remarks>A clean bubble's surface moves along (Hadamard and Rybczynski), a dirty one's is stiff (Stokes) and two thirds as fast;
/// bubbles in glass lie between, nearer the first.</remarks>
public static class BubbleRise
{
    /// <summary>Speed of a bubble with a moving surface, m/s.</summary>
    /// <param name="diameterMetres">Of the bubble, m.</param>
    /// <param name="pascalSeconds">Viscosity of the glass, Pa·s.</param>
    /// <param name="kilogramsPerCubicMetre">Density of the glass, kg/m³.</param>
    public static double MetresPerSecond(double diameterMetres, double pascalSeconds, double kilogramsPerCubicMetre)
    {
        var radius = Require.Positive(diameterMetres) / 2;
        return Require.Positive(kilogramsPerCubicMetre) * PhysicalConstants.StandardGravity * radius * radius / (3 * Require.Positive(pascalSeconds));
    }

    /// <summary>Speed of a bubble with a stiff surface, m/s; arguments as <see cref="MetresPerSecond"/>.</summary>
    public static double StiffMetresPerSecond(double diameterMetres, double pascalSeconds, double kilogramsPerCubicMetre) =>
        MetresPerSecond(diameterMetres, pascalSeconds, kilogramsPerCubicMetre) * 2 / 3;

    /// <summary>How long a bubble with a moving surface needs from the bottom to the top.</summary>
    /// <param name="depthMetres">Of the glass, m.</param>
    /// <param name="diameterMetres">Of the bubble, m.</param>
    /// <param name="pascalSeconds">Viscosity of the glass, Pa·s.</param>
    /// <param name="kilogramsPerCubicMetre">Density of the glass, kg/m³.</param>
    public static Duration TimeToRise(double depthMetres, double diameterMetres, double pascalSeconds, double kilogramsPerCubicMetre) =>
        Duration.FromSeconds(Require.NotNegative(depthMetres) / MetresPerSecond(diameterMetres, pascalSeconds, kilogramsPerCubicMetre));
}
