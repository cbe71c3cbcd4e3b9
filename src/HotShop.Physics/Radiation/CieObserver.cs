namespace HotShop.Physics.Radiation;

/// <summary>Colour matching functions of the CIE 1931 observer, as sums of bells with two widths. Source: Wyman, Sloan and
/// Shirley, JCGT 2(2), 2013.</summary>
internal static class CieObserver
{
    public static double X(double nanometres) =>
        1.056 * Bell(nanometres, 599.8, 37.9, 31.0) + 0.362 * Bell(nanometres, 442.0, 16.0, 26.7)
        - 0.065 * Bell(nanometres, 501.1, 20.4, 26.2);

    public static double Y(double nanometres) => 0.821 * Bell(nanometres, 568.8, 46.9, 40.5) + 0.286 * Bell(nanometres, 530.9, 16.3, 31.1);

    public static double Z(double nanometres) => 1.217 * Bell(nanometres, 437.0, 11.8, 36.0) + 0.681 * Bell(nanometres, 459.0, 26.0, 13.8);

    static double Bell(double at, double centre, double widthBelow, double widthAbove)
    {
        var distance = (at - centre) / (at < centre ? widthBelow : widthAbove);
        return Math.Exp(-0.5 * distance * distance);
    }
}
