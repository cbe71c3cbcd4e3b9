using System.Globalization;
using HotShop.Physics.Annealing;
using HotShop.Physics.Glass;

namespace HotShop.Monitor.Annealing;

/// <summary>A curve against a glass of the studio, in figures and in words.</summary>
/// <param name="HoursAboveStrainPoint">How long the curve stays where stress can leave.</param>
/// <param name="FastestCoolingKelvinPerHour">Between annealing and strain point, where lasting stress is made; null where it does not pass.</param>
/// <param name="IsLow">The curve stays so low that stress does not leave, or hardly.</param>
sealed record LoadGlassAnswer(
    string Name, double AnnealingPointCelsius, double StrainPointCelsius, double HighestCelsius, double HoursAboveStrainPoint, double? FastestCoolingKelvinPerHour, bool IsLow, string Words)
{
    /// <summary>A model's annealing point is good to 9 to 17 °C, and annealers are often held a little below it (common practice).</summary>
    const double NearKelvin = 20;

    /// <summary>So far above the annealing point soft ware marks and sags (common practice).</summary>
    const double SoftKelvin = 40;

    public static LoadGlassAnswer Of(AnnealingCurve curve, GlassProfile glass)
    {
        var fit = CurveInGlass.Of(curve, glass);
        var (annealing, strain) = (glass.AnnealingPointCelsius, glass.StrainPointCelsius);
        return new(glass.Name, annealing, strain, fit.HighestCelsius, fit.AboveStrainPoint.TotalHours, fit.FastestCoolingKelvinPerHour > 0 ? fit.FastestCoolingKelvinPerHour : null,
            fit.HighestCelsius < annealing - NearKelvin, WordsOf(glass.Name, annealing, strain, fit));
    }

    static string WordsOf(string glass, double annealing, double strain, CurveInGlass fit)
    {
        if (fit.HighestCelsius < strain)
            return $"It stays below the strain point of {glass}, {Both(strain)}: no stress leaves. Its annealing point is {Both(annealing)}. Is it the right glass and the right curve?";
        if (fit.HighestCelsius < annealing - NearKelvin)
            return $"It stays {Difference(annealing - fit.HighestCelsius)} below the annealing point of {glass}, {Both(annealing)}: stress leaves in hours there, not in minutes. Is the hold long enough?";
        var hot = fit.HighestCelsius > annealing + SoftKelvin ? $"It goes {Difference(fit.HighestCelsius - annealing)} above the annealing point of {glass}, {Both(annealing)}: ware may mark or sag. " : "";
        return hot + (fit.FastestCoolingKelvinPerHour > 0
            ? $"It cools {glass} from its annealing point, {Both(annealing)}, through its strain point, {Both(strain)}, at up to {Difference(fit.FastestCoolingKelvinPerHour)} an hour: whether that suits the thickest part is for a person to judge."
            : $"It does not cool {glass} through its strain point, {Both(strain)}.");
    }

    static string Both(double celsius) => string.Create(CultureInfo.InvariantCulture, $"{celsius:0} °C ({celsius * 1.8 + 32:0} °F)");

    static string Difference(double kelvin) => string.Create(CultureInfo.InvariantCulture, $"{kelvin:0} °C ({kelvin * 1.8:0} °F)");
}
