using System.Globalization;

namespace HotShop.Mutation;

/// <summary>By how much a number is altered: five per mille up; a whole number by one; 0 becomes 0.005.</summary>
static class Alteration
{
    /// <summary>5 ‰: ten times what a table printed to four digits can hide, a tenth of what a person would notice by eye.</summary>
    const double Relative = 0.005;

    public static double Of(double value) => value == 0 ? Relative : value * (1 + Relative);

    public static decimal Of(decimal value) => value == 0 ? (decimal)Relative : value * (1 + (decimal)Relative);

    /// <summary>A double that reads as one, in C# and in JSON.</summary>
    public static string Text(double value)
    {
        var text = value.ToString("R", CultureInfo.InvariantCulture);
        return text.AsSpan().IndexOfAny('.', 'E') >= 0 ? text : text + ".0";
    }
}
