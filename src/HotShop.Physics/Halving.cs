namespace HotShop.Physics;

/// <summary>Roots by halving a bracket: slower than Newton's steps, and it always ends, at the last bit.</summary>
internal static class Halving
{
    /// <summary>Where <paramref name="isBelow"/> turns from true to false.</summary>
    /// <param name="low">True here, or the answer.</param>
    /// <param name="high">False here, or the answer.</param>
    public static double Root(double low, double high, Predicate<double> isBelow)
    {
        while (true)
        {
            var middle = (low + high) / 2;
            if (middle <= low || middle >= high) return middle;
            if (isBelow(middle)) low = middle;
            else high = middle;
        }
    }
}
