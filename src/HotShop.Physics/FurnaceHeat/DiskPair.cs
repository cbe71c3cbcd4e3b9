namespace HotShop.Physics.FurnaceHeat;

/// <summary>Two disks that face each other on one axis.</summary>
public static class DiskPair
{
    /// <summary>Share of what the first sends out that meets the second, 0 to 1.</summary>
    /// <param name="firstRadiusMetres">Above 0.</param>
    /// <param name="secondRadiusMetres">Above 0.</param>
    /// <param name="distanceMetres">Between their planes, above 0.</param>
    /// <remarks>Source: closed form for coaxial parallel disks in every textbook of radiation, such as Siegel and Howell.</remarks>
    public static double ViewFactor(double firstRadiusMetres, double secondRadiusMetres, double distanceMetres)
    {
        var first = Require.Positive(firstRadiusMetres) / Require.Positive(distanceMetres);
        var second = Require.Positive(secondRadiusMetres) / distanceMetres;
        var ratio = second / first;
        var s = 1 + (1 + second * second) / (first * first);
        // (s - √(s² - 4 ratio²)) / 2, written so that disks far apart lose no digits.
        return 2 * ratio * ratio / (s + Math.Sqrt(s * s - 4 * ratio * ratio));
    }

    /// <summary>What a round hole would pass if its sides kept nothing and sent all that strikes them back or on, half and half: (1 + F12)/2.</summary>
    /// <param name="diameterMetres">Above 0.</param>
    /// <param name="wallMetres">Above 0.</param>
    public static double HoleBound(double diameterMetres, double wallMetres) => (1 + ViewFactor(diameterMetres / 2, diameterMetres / 2, wallMetres)) / 2;
}
