namespace HotShop.Monitor.History.Csv;

/// <summary>
/// Text cells that a spreadsheet would take for a formula, made harmless with an apostrophe before them and read back without it. Numbers and times are no text cells.
/// Source of the characters: OWASP, CSV Injection (= + - @, tab and carriage return; from memory).
/// </summary>
static class CellText
{
    public static string Guard(string text) => text.Length > 0 && (IsRisky(text[0]) || text[0] == '\'') ? "'" + text : text;

    /// <summary>Takes the apostrophe off again; one that a person typed before a word stays.</summary>
    public static string Plain(string cell) => cell.Length > 1 && cell[0] == '\'' && (IsRisky(cell[1]) || cell[1] == '\'') ? cell[1..] : cell;

    static bool IsRisky(char first) => first is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n';
}
