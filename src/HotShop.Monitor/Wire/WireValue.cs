using System.Buffers;
using System.Globalization;
using System.Text.Json;

namespace HotShop.Monitor.Wire;

/// <summary>A number or a state as devices write it, or why it is none. Numbers in JSON strings are read: many devices quote everything.</summary>
readonly record struct WireValue(double Number, string? Problem)
{
    const NumberStyles Plain = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    // The library would also read '∞' and a culture's own signs.
    static readonly SearchValues<char> OfNumbers = SearchValues.Create("0123456789+-.eE");

    static readonly string[] SayNothing = ["", "nan", "null", "none", "unavailable", "unknown", "n/a", "-", "inf", "-inf", "+inf", "infinity", "-infinity"];

    static WireValue Refused(string problem) => new(0, problem);

    public static WireValue Of(JsonElement element, bool isState) => element.ValueKind switch
    {
        JsonValueKind.Number => OfText(element.GetRawText(), isState),
        JsonValueKind.String => OfText(element.GetString()!, isState),
        JsonValueKind.True => OfText("true", isState),
        JsonValueKind.False => OfText("false", isState),
        JsonValueKind.Null => Refused("the value is null: send nothing while there is no value"),
        var other => Refused($"the value is {(other == JsonValueKind.Array ? "an array" : "an object")}: send {Wanted(isState)}"),
    };

    public static WireValue OfText(string untrimmed, bool isState)
    {
        var text = untrimmed.Trim(' ', '\t', '\r', '\n');
        if (Array.Exists(SayNothing, word => word.Equals(text, StringComparison.OrdinalIgnoreCase)))
            return Refused($"'{text}' says that there is no value: send nothing then");
        if (isState) return State(text);
        if (State(text) is { Problem: null } && !char.IsAsciiDigit(text[^1])) return Refused($"'{text}' is a state: send a number such as 1148.6");
        if (!double.TryParse(text, Plain, CultureInfo.InvariantCulture, out var number) || text.AsSpan().ContainsAnyExcept(OfNumbers))
            return Refused(NoNumber(text));
        if (!double.IsFinite(number)) return Refused($"'{Shown.Short(text)}' is too large for a number");
        return new(number + 0.0, null);     // -0 becomes 0, so that equal readings are equal bit by bit
    }

    static WireValue State(string text) => text switch
    {
        "1" or "1.0" => new(1, null),
        "0" or "0.0" => new(0, null),
        _ when Is(text, "true") || Is(text, "on") => new(1, null),
        _ when Is(text, "false") || Is(text, "off") => new(0, null),
        _ => Refused($"'{Shown.Short(text)}' is no state: send {Wanted(isState: true)}"),
    };

    static bool Is(string text, string word) => text.Equals(word, StringComparison.OrdinalIgnoreCase);

    static string Wanted(bool isState) => isState ? "true or false, on or off, 1 or 0" : "a number such as 1148.6";

    static string NoNumber(string text)
    {
        var comma = text.IndexOf(',', StringComparison.Ordinal);
        if (comma > 0 && text.LastIndexOf(',') == comma && !text.Contains('.', StringComparison.Ordinal)
            && double.TryParse(text.Replace(',', '.'), Plain, CultureInfo.InvariantCulture, out _))
        {
            var meant = text.Replace(',', '.');
            return text.Length - comma == 4
                ? $"'{Shown.Short(text)}' has a comma: write {Shown.Short(meant)} or {Shown.Short(text.Replace(",", "", StringComparison.Ordinal))}, with a decimal point and no separators"
                : $"'{Shown.Short(text)}' has a comma: write {Shown.Short(meant)}";
        }
        return $"'{Shown.Short(text)}' is no number: send one such as 1148.6; a unit goes into an object, {{\"value\":1148.6,\"unit\":\"Cel\"}}";
    }
}
