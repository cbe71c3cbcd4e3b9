namespace HotShop.Physics.Radiation;

/// <summary>A colour of the sRGB space, 0 to 255 a channel.</summary>
public readonly record struct SrgbColour(byte Red, byte Green, byte Blue)
{
    /// <summary>As style sheets want it: <c>#f69000</c>.</summary>
    public string Hex => $"#{Red:x2}{Green:x2}{Blue:x2}";
}

/// <summary>The colour in which a hot chamber glows.</summary>
/// <remarks>
/// Planck's law over 380 to 780 nm in 5 nm steps, CIE 1931 observer by the fit of Wyman, Sloan and Shirley (JCGT 2(2), 2013),
/// sRGB matrix and curve of IEC 61966-2-1 with negative channels cut to 0. Brightness is a choice: luminance relative to 1150 °C
/// is compressed by the cube root, as CIE lightness is, and limited softly; true luminance at 600 °C is 1/35,500 of that at 1150
/// °C, which no screen shows.
/// </remarks>
public static class Glow
{
    const double ReferenceCelsius = 1150, Gain = 2.6;

    static readonly double ReferenceLuminance = Tristimulus(PhysicalConstants.Kelvin(ReferenceCelsius)).Y;

    /// <summary>Colour of a black body.</summary>
    /// <param name="celsius">°C, not below absolute zero.</param>
    public static SrgbColour Srgb(double celsius)
    {
        var (red, green, blue) = Linear(celsius);
        return new(Channel(red), Channel(green), Channel(blue));

        static byte Channel(double linear) => (byte)Math.Round(byte.MaxValue * Encoded(linear));
    }

    /// <summary>The same as shares of the brightest light a screen gives, 0 to 1 a channel, before sRGB's curve.</summary>
    /// <param name="celsius">°C, not below absolute zero.</param>
    public static (double Red, double Green, double Blue) Linear(double celsius)
    {
        var (x, y, z) = Tristimulus(PhysicalConstants.Kelvin(Require.Celsius(celsius)));
        var red = Math.Max(0, 3.2406 * x - 1.5372 * y - 0.4986 * z);
        var green = Math.Max(0, -0.9689 * x + 1.8758 * y + 0.0415 * z);
        var blue = Math.Max(0, 0.0557 * x - 0.2040 * y + 1.0570 * z);
        var largest = Math.Max(red, Math.Max(green, blue));
        if (largest <= 0) return default;

        var brightness = Math.Cbrt(y / ReferenceLuminance);
        return (Limited(red), Limited(green), Limited(blue));

        double Limited(double light) => 1 - Math.Exp(-Gain * brightness * light / largest);
    }

    /// <summary>A channel as sRGB stores it, 0 to 1. Source: IEC 61966-2-1.</summary>
    /// <param name="linear">Share of the brightest light, 0 to 1.</param>
    public static double Encoded(double linear) =>
        Require.Share(linear) <= 0.0031308 ? 12.92 * linear : 1.055 * Math.Pow(linear, 1 / 2.4) - 0.055;

    /// <summary>CIE 1931 chromaticity of a black body.</summary>
    public static (double X, double Y) Chromaticity(double kelvin)
    {
        var (x, y, z) = Tristimulus(Require.Positive(kelvin));
        return (x / (x + y + z), y / (x + y + z));
    }

    static (double X, double Y, double Z) Tristimulus(double kelvin)
    {
        var (x, y, z) = (0.0, 0.0, 0.0);
        for (var nanometres = 380; nanometres <= 780; nanometres += 5)
        {
            var radiance = Radiance(nanometres * 1e-9, kelvin);
            x += radiance * CieObserver.X(nanometres);
            y += radiance * CieObserver.Y(nanometres);
            z += radiance * CieObserver.Z(nanometres);
        }
        return (x, y, z);
    }

    /// <summary>Planck's law up to a constant factor.</summary>
    static double Radiance(double metres, double kelvin) =>
        Math.Pow(metres, -5) / (Math.Exp(PhysicalConstants.SecondRadiation / (metres * kelvin)) - 1);
}
