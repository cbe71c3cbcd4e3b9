using HotShop.Physics.Radiation;

namespace HotShop.Checks.Furnace;

/// <summary>The colour of a glowing chamber.</summary>
static class GlowChecks
{
    const string Apart = "Planck's law, the 1931 observer by Wyman, Sloan and Shirley (JCGT 2(2), 2013) and the matrix of IEC 61966-2-1, by other code";
    const string Lamp = "CIE standard illuminant A";
    const string Curve = "IEC 61966-2-1, by other code";

    public static IEnumerable<Check> All =>
    [
        // The fit's own error is 0.0012.
        new("black body of 2856 K, chromaticity x", "0.4476", "", 0.0013, Lamp, Standing.Memory, () => Glow.Chromaticity(2856).X),
        new("black body of 2856 K, chromaticity y", "0.4074", "", 0.0013, Lamp, Standing.Memory, () => Glow.Chromaticity(2856).Y),
        .. Chromaticity(1000, "0.642197", "0.355116"), .. Chromaticity(1500, "0.581323", "0.397532"), .. Chromaticity(2856, "0.446387", "0.408491"),
        .. Chromaticity(6504, "0.313436", "0.323696"), .. Chromaticity(20000, "0.256680", "0.257636"),
        .. Colour(600, "0.076069", "0.000320", "0"), .. Colour(800, "0.341762", "0.018388", "0"), .. Colour(1000, "0.737327", "0.113825", "0"),
        .. Colour(1150, "0.925726", "0.280302", "0"), .. Colour(1400, "0.997753", "0.681379", "0"), .. Colour(1800, "1.000000", "0.988487", "0.204866"),
        Check.Printed("sRGB's curve at 0.001", "0.01292", "", Curve, () => Glow.Encoded(0.001), Standing.Computed),
        Check.Printed("sRGB's curve at 0.18", "0.46135613", "", Curve, () => Glow.Encoded(0.18), Standing.Computed),
        Check.Printed("sRGB's curve at 0.5", "0.73535698", "", Curve, () => Glow.Encoded(0.5), Standing.Computed),
    ];

    static IEnumerable<Check> Chromaticity(double kelvin, string x, string y) =>
    [
        Check.Printed($"black body of {kelvin} K by the fitted observer, chromaticity x", x, "", Apart, () => Glow.Chromaticity(kelvin).X, Standing.Computed),
        Check.Printed($"black body of {kelvin} K by the fitted observer, chromaticity y", y, "", Apart, () => Glow.Chromaticity(kelvin).Y, Standing.Computed),
    ];

    static IEnumerable<Check> Colour(double celsius, string red, string green, string blue) =>
    [
        Check.Printed($"red of a chamber at {celsius} °C, share of a screen's light", red, "", Apart, () => Glow.Linear(celsius).Red, Standing.Computed),
        Check.Printed($"green of a chamber at {celsius} °C, share of a screen's light", green, "", Apart, () => Glow.Linear(celsius).Green, Standing.Computed),
        new($"blue of a chamber at {celsius} °C, share of a screen's light", blue, "", 0.5000001e-6, Apart, Standing.Computed, () => Glow.Linear(celsius).Blue),
    ];
}
