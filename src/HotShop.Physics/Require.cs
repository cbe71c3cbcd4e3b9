using System.Runtime.CompilerServices;

namespace HotShop.Physics;

/// <summary>Argument checks that let no NaN through: a comparison with NaN is false, so a plain "&lt; 0" would.</summary>
internal static class Require
{
    public static double Finite(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) ? value : throw Refused(name, value, "a finite number");

    public static double Positive(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value > 0 ? value : throw Refused(name, value, "a number above 0");

    public static double NotNegative(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value >= 0 ? value : throw Refused(name, value, "0 or a number above it");

    public static double Share(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        value is >= 0 and <= 1 ? value : throw Refused(name, value, "a share from 0 to 1");

    /// <summary>A temperature in °C, finite and not below absolute zero.</summary>
    public static double Celsius(double value, [CallerArgumentExpression(nameof(value))] string? name = null) =>
        double.IsFinite(value) && value >= PhysicalConstants.AbsoluteZeroCelsius
            ? value
            : throw Refused(name, value, "a temperature of -273.15 °C or above");

    static ArgumentOutOfRangeException Refused(string? name, double value, string wanted) => new(name, value, $"expected {wanted}");
}
