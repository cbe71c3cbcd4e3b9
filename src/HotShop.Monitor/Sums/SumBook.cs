using System.Globalization;

namespace HotShop.Monitor.Sums;

/// <summary>A sum with what was typed and what it comes to; the answer is null while something typed is wrong.</summary>
/// <param name="IsExample">Nothing was typed: the numbers are the sum's own.</param>
/// <param name="Unknown">Names in the address that the sum does not ask for.</param>
sealed record WorkedSum(Sum Sum, SumInput Input, SumAnswer? Answer, bool IsExample, IReadOnlyList<string> Unknown);

/// <summary>All sums, and the one way to work them: the page and the interface both come here.</summary>
sealed class SumBook(IEnumerable<Sum> sums)
{
    /// <summary>Half of the last of four digits.</summary>
    const double Rounding = 0.0005;

    readonly Dictionary<string, Sum> byId = sums.ToDictionary(s => s.Id);

    public IReadOnlyCollection<Sum> All => byId.Values;

    public Sum? Find(string id) => byId.GetValueOrDefault(id);

    /// <param name="typed">Names and values of the address.</param>
    /// <param name="decimalMark">Of whoever typed it.</param>
    /// <param name="isUs">Units in which examples are shown.</param>
    public static WorkedSum Work(Sum sum, IReadOnlyDictionary<string, string> typed, string decimalMark, bool isUs, SumAsker asker)
    {
        var isExample = !sum.Fields.Any(f => typed.ContainsKey(f.Name));
        var entries = new List<SumEntry>();
        foreach (var field in sum.Fields)
            entries.Add(field switch
            {
                ChoiceField choice => Chosen(choice, typed.GetValueOrDefault(choice.Name)),
                NumberField number when IsAsked(number, entries) => Typed(number, typed, decimalMark, isUs, isAsked: true),
                NumberField number => Typed(number, typed, decimalMark, isUs, isAsked: false) with { IsAsked = false },
                _ => throw new InvalidOperationException($"{sum.Id}: field {field.Name}"),
            });
        var input = new SumInput(entries);
        var answer = input.IsSound ? sum.Work(input, asker) : null;
        if (answer?.Refusal is { } refusal) (input, answer) = (input.With(refusal), null);
        string[] known = [.. sum.Fields.Select(f => f.Name), .. sum.Fields.OfType<NumberField>().Select(f => UnitName(f))];
        return new WorkedSum(sum, input, answer, isExample, [.. typed.Keys.Except(known)]);
    }

    /// <summary>Name of a number's unit in the address.</summary>
    public static string UnitName(NumberField field) => field.Name + "Unit";

    static SumEntry Chosen(ChoiceField field, string? text)
    {
        var value = string.IsNullOrEmpty(text) ? field.Choices[0].Value : text;
        return field.Choices.Any(c => c.Value == value)
            ? new(field, value, null, null, null)
            : new(field, field.Choices[0].Value, null, null, $"'{Wire.Shown.Short(value)}' is none of {string.Join(", ", field.Choices.Select(c => c.Value))}");
    }

    static bool IsAsked(NumberField field, List<SumEntry> before) =>
        field.When is not { } when || before.Find(e => e.Field.Name == when.Field) is not { Text: { } chosen } || when.Values.Contains(chosen);

    static SumEntry Typed(NumberField field, IReadOnlyDictionary<string, string> typed, string decimalMark, bool isUs, bool isAsked)
    {
        if (!typed.TryGetValue(field.Name, out var text))
        {
            var usual = field.Unit(isUs);
            if (field.Example is not { } example) return new(field, null, usual, null, null);
            text = Written(usual.Of(example), decimalMark);
            return new(field, text, usual, Number(field, SumNumber.Read(text, decimalMark).Number, usual), null);
        }
        // A number in an address without a unit is in the unit that the interface answers in.
        var code = typed.GetValueOrDefault(UnitName(field));
        var unit = string.IsNullOrEmpty(code) ? field.Measure.Canonical : field.Measure.Find(code);
        if (unit is null) return new(field, text, field.Unit(isUs), null, $"'{Wire.Shown.Short(code!)}' is none of {string.Join(", ", field.Measure.Units.Select(u => u.Code))}");
        if (!isAsked || string.IsNullOrWhiteSpace(text))
            return new(field, text, unit, null, isAsked && field is { Example: not null, MayBeEmpty: false } ? $"write a number{InUnit(unit)}" : null);
        var (number, problem) = SumNumber.Read(text, decimalMark);
        if (problem is not null) return new(field, text, unit, null, problem);
        var value = unit.ToCanonical(number.Value);
        // Limits are shown to four digits, and whoever types one of them must not be refused.
        if (Math.Abs(value - Math.Clamp(value, field.Least, field.Most)) <= Rounding * Math.Abs(value)) value = Math.Clamp(value, field.Least, field.Most);
        if (!(value >= field.Least && value <= field.Most))
            return new(field, text, unit, null, $"{Wire.Shown.Short(text)}{InUnit(unit)} is outside {Limit(field.Least, unit, decimalMark)} to {Limit(field.Most, unit, decimalMark)}{InUnit(unit)}");
        return new(field, text, unit, Number(field, number, unit) with { Value = value }, null);
    }

    static Doubt Number(NumberField field, SumNumber number, SumUnit unit) =>
        new(field.Label, unit.ToCanonical(number.Value), number.HalfStep * Math.Abs(unit.Scale), field.Least, field.Most);

    static string InUnit(SumUnit unit) => unit.Words == "" ? "" : $" {unit.Words}";

    static string Limit(double canonical, SumUnit unit, string decimalMark) => Written(unit.Of(canonical), decimalMark);

    /// <summary>An example or a limit in the reader's unit, to four digits.</summary>
    static string Written(double value, string decimalMark)
    {
        var decimals = value == 0 ? 0 : Math.Clamp(3 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 15);
        return Math.Round(value, decimals).ToString("0.#########", CultureInfo.InvariantCulture).Replace(".", decimalMark, StringComparison.Ordinal);
    }
}
