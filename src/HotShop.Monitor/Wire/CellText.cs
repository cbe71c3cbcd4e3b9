namespace HotShop.Monitor.Wire;

/// <summary>
/// Text cells that a spreadsheet would take for a formula, made harmless with an apostrophe before them and read back without it. Numbers and times are no text cells.
/// Source of the characters: OWASP, CSV Injection (= + - @, tab and carriage return; from memory).
/// </summary>
static class CellText
{
    public static string Guard(string text) => text.Length > 0 && (IsRisky(text[0]) || text[0] == '\'') ? "'" + text : text;

    /// <summary>Takes the apostrophe off again; one that a person typed before a word stays.</summary>
    public static string Plain(string cell) => cell.Length > 1 && cell[0] == '\'' && (IsRisky(cell[1]) || cell[1] == '\'') ? cell[1..] : cell;

    /// <summary>Whether a cell must stand in quotes (RFC 4180, 2.6): a library that ends its lines in CR LF lets one of the two alone pass.</summary>
    public static bool NeedsQuotes(string? cell, string separator) =>
        cell is { Length: > 0 } && (cell.AsSpan().IndexOfAny('"', '\r', '\n') >= 0 || cell.Contains(separator, StringComparison.Ordinal) || cell[0] == ' ' || cell[^1] == ' ');

    static bool IsRisky(char first) => first is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n';
}
