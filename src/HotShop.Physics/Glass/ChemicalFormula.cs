using System.Globalization;

namespace HotShop.Physics.Glass;

/// <summary>Molar masses of formulas such as <c>CaMg(CO3)2</c>, from standard atomic weights.</summary>
public static class ChemicalFormula
{
    static readonly Lazy<AtomicWeightTable> Table = new(() => EmbeddedJson.Read<AtomicWeightTable>("Glass.atomic-weights.json"));

    /// <summary>Molar mass, g/mol.</summary>
    /// <exception cref="FormatException">No formula of elements that glass and its raw materials are made of.</exception>
    public static double GramsPerMole(string formula)
    {
        ArgumentNullException.ThrowIfNull(formula);
        var at = 0;
        var grams = Group(formula, ref at);
        return at == formula.Length && at > 0 ? grams : throw NoFormula(formula);
    }

    /// <summary>Reads up to the end or to the bracket that closes the group.</summary>
    static double Group(string formula, ref int at)
    {
        var grams = 0.0;
        while (at < formula.Length && formula[at] != ')')
        {
            double part;
            if (formula[at] == '(')
            {
                at++;
                part = Group(formula, ref at);
                if (at++ >= formula.Length) throw NoFormula(formula);
            }
            else
            {
                part = Element(formula, ref at);
            }
            grams += part * Count(formula, ref at);
        }
        return grams;
    }

    static double Element(string formula, ref int at)
    {
        var end = at + 1;
        while (end < formula.Length && char.IsAsciiLetterLower(formula[end])) end++;
        var symbol = formula[at..end];
        at = end;
        return Table.Value.Weights.TryGetValue(symbol, out var weight) ? weight : throw NoFormula(formula);
    }

    static int Count(string formula, ref int at)
    {
        var from = at;
        while (at < formula.Length && char.IsAsciiDigit(formula[at])) at++;
        return at == from ? 1 : int.Parse(formula.AsSpan(from, at - from), NumberStyles.None, CultureInfo.InvariantCulture);
    }

    static FormatException NoFormula(string formula) => new($"'{formula}' is no formula of the elements known here");
}

/// <summary>The stored atomic weights, g/mol.</summary>
internal sealed record AtomicWeightTable(string Source, string Licence, Dictionary<string, double> Weights);
