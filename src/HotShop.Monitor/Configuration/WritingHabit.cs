namespace HotShop.Monitor.Configuration;

/// <summary>How a country writes numbers and amounts.</summary>
/// <param name="Group">Between thousands.</param>
/// <param name="GroupsFromDigits">Whole digits from which thousands are parted: 4 (1,234), or 5 where 1234 stands together.</param>
/// <param name="Pattern">Where the amount (n) and the currency's sign (¤) stand; the minus of a negative amount goes in front.</param>
/// <param name="Sign">Sign of the country's own currency.</param>
/// <param name="MonthFirst">Mar 5, 2026 instead of 5 Mar 2026.</param>
/// <param name="IsLetterPaper">Prints on US Letter, not on A4.</param>
sealed record WritingHabit(string Culture, string Currency, string Sign, string Decimal, string Group, int GroupsFromDigits, string Pattern, bool MonthFirst = false, bool IsLetterPaper = false)
{
    const string Space = "\u00a0", Narrow = "\u202f";

    /// <remarks>
    /// Source: Unicode CLDR 48, standard number and currency formats. The service has its own list because it runs without the system's:
    /// a small computer need not have one. A narrow no-break space and a full-width yen sign are replaced by what every font has.
    /// </remarks>
    static readonly WritingHabit[] all =
    [
        new("en-US", "USD", "$", ".", ",", 4, "¤n", MonthFirst: true, IsLetterPaper: true),
        new("en-CA", "CAD", "$", ".", ",", 4, "¤n", MonthFirst: true, IsLetterPaper: true),
        new("fr-CA", "CAD", "$", ",", Space, 4, $"n{Space}¤", IsLetterPaper: true),
        new("en-GB", "GBP", "£", ".", ",", 4, "¤n"),
        new("en-IE", "EUR", "€", ".", ",", 4, "¤n"),
        new("en-AU", "AUD", "$", ".", ",", 4, "¤n"),
        new("en-NZ", "NZD", "$", ".", ",", 4, "¤n"),
        new("de-DE", "EUR", "€", ",", ".", 4, $"n{Space}¤"),
        new("de-AT", "EUR", "€", ",", ".", 4, $"¤{Space}n"),
        new("de-CH", "CHF", "CHF", ".", "'", 4, $"¤{Space}n"),
        new("fr-FR", "EUR", "€", ",", Space, 4, $"n{Space}¤"),
        new("nl-NL", "EUR", "€", ",", ".", 4, $"¤{Space}n"),
        new("it-IT", "EUR", "€", ",", ".", 5, $"n{Space}¤"),
        new("es-ES", "EUR", "€", ",", ".", 5, $"n{Space}¤"),
        new("pt-PT", "EUR", "€", ",", Space, 5, $"n{Space}¤"),
        new("da-DK", "DKK", "kr.", ",", ".", 4, $"n{Space}¤"),
        new("sv-SE", "SEK", "kr", ",", Space, 4, $"n{Space}¤"),
        new("nb-NO", "NOK", "kr", ",", Space, 4, $"n{Space}¤"),
        new("fi-FI", "EUR", "€", ",", Space, 4, $"n{Space}¤"),
        new("cs-CZ", "CZK", "Kč", ",", Space, 4, $"n{Space}¤"),
        new("pl-PL", "PLN", "zł", ",", Space, 5, $"n{Space}¤"),
        new("ja-JP", "JPY", "¥", ".", ",", 4, "¤n"),
    ];

    static readonly (string Zone, string Culture)[] byZone =
    [
        ("Europe/Berlin", "de-DE"), ("Europe/Busingen", "de-DE"), ("Europe/Vienna", "de-AT"), ("Europe/Paris", "fr-FR"), ("Europe/Brussels", "nl-NL"), ("Europe/Amsterdam", "nl-NL"),
        ("Europe/Luxembourg", "fr-FR"), ("Europe/Rome", "it-IT"), ("Europe/Madrid", "es-ES"), ("Europe/Lisbon", "pt-PT"), ("Europe/Helsinki", "fi-FI"), ("Europe/Dublin", "en-IE"),
    ];

    public static IEnumerable<string> Names => all.Select(h => h.Culture);

    /// <returns>Null where the culture is not in the list.</returns>
    public static WritingHabit? Named(string culture) => all.FirstOrDefault(h => h.Culture == culture);

    /// <summary>What is usual for a currency, and where several countries share it, for the zone; else as in Ireland, whose numbers nobody misreads.</summary>
    public static WritingHabit Usual(string currency, string zone)
    {
        var own = byZone.FirstOrDefault(z => z.Zone == zone).Culture is { } culture ? Named(culture) : null;
        return own?.Currency == currency ? own : all.FirstOrDefault(h => h.Currency == currency && h.Currency != "EUR") ?? Named("en-IE")!;
    }
}
