using HotShop.Monitor.Configuration;
using HotShop.Monitor.Money;
using HotShop.Monitor.Tests.Support;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Money;

public sealed class StudioFormatTests
{
    internal static StudioFormat For(string currency, string zone = "Europe/Berlin", string? culture = null) =>
        new(SomeStudio.Configuration with { Currency = currency, Zone = zone, Culture = culture });

    // Unicode CLDR 48 (standard currency format), but the minus always in front of all; a space stands here for the no-break space.
    [Theory]
    [InlineData("EUR", "de-DE", "-1.234.567,89 €", "1.234,50 €")]
    [InlineData("USD", "en-US", "-$1,234,567.89", "$1,234.50")]
    [InlineData("GBP", "en-GB", "-£1,234,567.89", "£1,234.50")]
    [InlineData("CHF", "de-CH", "-CHF 1'234'567.89", "CHF 1'234.50")]
    [InlineData("EUR", "fr-FR", "-1 234 567,89 €", "1 234,50 €")]
    [InlineData("EUR", "es-ES", "-1.234.567,89 €", "1234,50 €")]
    [InlineData("EUR", "nl-NL", "-€ 1.234.567,89", "€ 1.234,50")]
    [InlineData("CZK", "cs-CZ", "-1 234 567,89 Kč", "1 234,50 Kč")]
    [InlineData("JPY", "ja-JP", "-¥1,234,568", "¥1,235")]
    public void Amounts_are_written_as_the_country_writes_them(string currency, string culture, string large, string small)
    {
        var format = For(currency, culture: culture);
        Assert.Equal((large, small), (format.Amount(-1_234_567.89m).Replace('\u00a0', ' '), format.Amount(1_234.5m).Replace('\u00a0', ' ')));
    }

    // ISO 4217, minor units.
    [Theory, InlineData("JPY", 0), InlineData("KRW", 0), InlineData("ISK", 0), InlineData("EUR", 2), InlineData("USD", 2), InlineData("HUF", 2), InlineData("KWD", 3), InlineData("TND", 3)]
    public void A_currency_has_the_digits_of_its_standard(string currency, int digits) => Assert.Equal(digits, For(currency).Digits);

    [Theory]
    [InlineData("EUR", "Europe/Berlin", "de-DE")]
    [InlineData("EUR", "Europe/Rome", "it-IT")]
    [InlineData("EUR", "Europe/Tallinn", "en-IE")]
    [InlineData("USD", "America/New_York", "en-US")]
    [InlineData("USD", "Europe/Berlin", "en-US")]
    [InlineData("GBP", "Europe/London", "en-GB")]
    [InlineData("ZAR", "Africa/Johannesburg", "en-IE")]
    public void Without_a_word_in_the_configuration_currency_and_zone_decide(string currency, string zone, string culture) => Assert.Equal(culture, For(currency, zone).Culture);

    [Fact]
    public void A_currency_away_from_home_is_called_by_its_code() =>
        Assert.Equal(("1.234,50 USD", "CAD 1,234.50", "£0.00"), (For("USD", culture: "de-DE").Amount(1234.5m).Replace('\u00a0', ' '), For("CAD", culture: "en-US").Amount(1234.5m).Replace('\u00a0', ' '), For("GBP", "Europe/London").Amount(0)));

    [Fact]
    public void A_price_keeps_the_decimals_it_was_given_with() =>
        Assert.Equal(("0,0235 €", "0,10 €", "-0,0097 €"), (Plain(0.0235m), Plain(0.1m), Plain(-0.0097m)));

    static string Plain(decimal price) => For("EUR").Price(price).Replace('\u00a0', ' ');

    [Fact]
    public void A_day_has_its_month_in_words_and_units_follow_the_country()
    {
        var day = new LocalDate(2026, 3, 5);
        Assert.Equal(("5 Mar 2026", "Mar 5, 2026"), (For("EUR").Day(day), For("USD", "America/New_York").Day(day)));
        Assert.Equal(("1.000,00\u00a0m³", "353.15\u00a0CCF"), (For("EUR").Gas(1000), For("USD", "America/New_York").Gas(1000)));
        Assert.Equal(("100,0\u00a0kg", "220.5\u00a0lb"), (For("EUR").Glass(100), For("USD", "America/New_York").Glass(100)));
    }

    [Fact] public void A_number_too_small_to_show_has_no_minus() => Assert.Equal("0,00", For("EUR").Number(-0.001, 2));

    [Fact]
    public void A_spreadsheet_gets_the_same_digits_with_nothing_between_thousands() => Assert.Equal(("1234567,89", "1.234.567,89"), (For("EUR").Plain(1_234_567.891m, 2), For("EUR").Number(1_234_567.891m, 2)));
}
