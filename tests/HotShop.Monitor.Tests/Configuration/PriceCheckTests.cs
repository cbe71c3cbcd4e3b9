using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Configuration;

/// <summary>A wrong price list is named: where, what, what to do.</summary>
public sealed class PriceCheckTests
{
    static readonly PriceOptions plain = new() { From = "2026-01-01", Energy = "gas", PerKilowattHour = 0.1m }, perUnit = new() { From = "2026-01-01", Energy = "gas", Unit = "m3", Price = 0.98m };

    static StudioConfiguration With(params PriceOptions[] prices) => SomeStudio.Configuration with { Prices = prices };

    public static TheoryData<string, string, string, StudioConfiguration> Wrong => new()
    {
        { "prices[0]", "there is no price", "perKilowattHour, price (with unit) or blocks", With(plain with { PerKilowattHour = null }) },
        { "prices[0]", "more than one price", "write one of", With(plain with { Unit = "kWh", Price = 0.1m }) },
        { "prices[0].unit", "the price has no unit", "kWh, GJ, therm", With(perUnit with { Unit = null }) },
        { "prices[0].unit", "'cubic metres' is unknown", "m3", With(perUnit with { Unit = "cubic metres" }) },
        { "prices[0].unit", "electricity is not sold by the m3", "write kWh", With(perUnit with { Energy = "electricity" }) },
        { "prices[1].from", "two price lists of gas from 2026-01-01", "its own day", With(plain, perUnit) },
        { "prices[0].price", "is below zero", "write the price", With(perUnit with { Price = -1 }) },
        { "prices[0].standingChargePerMonth", "below zero", "0 for none", With(plain with { StandingChargePerMonth = -1 }) },
        { "prices[0].taxes[0].percent", "190 is no percentage", "write e.g. 19", With(plain with { Taxes = [new() { Name = "VAT", Percent = 190 }] }) },
        { "prices[0].taxes[0].on", "'total' is unknown", "subtotal-and-taxes", With(plain with { Taxes = [new() { Name = "VAT", Percent = 19, On = "total" }] }) },
        { "prices[0].blocks[1].upTo", "the last block ends", "leave 'upTo' out", With(perUnit with { Price = null, Blocks = [new() { UpTo = 5, Price = 1 }, new() { UpTo = 9, Price = 1 }] }) },
        { "prices[0].blocks[1].upTo", "do not rise", "rising", With(perUnit with { Price = null, Blocks = [new() { UpTo = 5, Price = 1 }, new() { UpTo = 5, Price = 1 }, new() { Price = 1 }] }) },
        { "prices[0].billFactor.heatingValue", "needs its heating value", "39.3 and MJ/m3", With(perUnit with { Unit = "therm", BillFactor = new() { VolumeFactor = 1.1m } }) },
        { "prices[0].billFactor.heatingValueUnit", "'Btu' is unknown", "Btu/ft3", With(perUnit with { BillFactor = new() { HeatingValue = 1000, HeatingValueUnit = "Btu" } }) },
        { "prices[0].billFactor.volumeFactor", "10.2264 is out of range", "1.02264", With(perUnit with { BillFactor = new() { VolumeFactor = 10.2264m } }) },
        { "prices[0].kilowattHoursPerUnit", "for litre, gallon or kilogram alone", "leave it out", With(perUnit with { KilowattHoursPerUnit = 10 }) },
        { "culture", "'de' is unknown", "de-DE", SomeStudio.Configuration with { Culture = "de" } },
        { "electricity", "no source or year", "carbonDioxideSource", SomeStudio.Configuration with { Electricity = new() { CarbonDioxideKilogramsPerKilowattHour = 0.38 } } },
    };

    [Theory, MemberData(nameof(Wrong))]
    public void A_wrong_price_list_is_named(string where, string what, string whatToDo, StudioConfiguration configuration)
    {
        var problems = ConfigurationCheck.Problems(configuration, "hotshop.json");
        Assert.Contains(problems, p => p.Where == $"hotshop.json: {where}" && p.What.Contains(what, StringComparison.Ordinal) && p.WhatToDo.Contains(whatToDo, StringComparison.Ordinal));
    }

    [Fact]
    public void Bills_of_many_countries_are_in_order() => Assert.Empty(ConfigurationCheck.Problems(With(
        plain, perUnit with { From = "2026-02-01", BillFactor = new() { VolumeFactor = 1.02264m } },
        new() { From = "2026-03-01", Energy = "gas", Unit = "kWh", Price = 0.0235m, BillFactor = new() { VolumeFactor = 1.02264m, HeatingValue = 39.3m }, StandingChargePerDay = 0.2963m, Taxes = [new() { Name = "VAT", Percent = 5 }] },
        new() { From = "2026-04-01", Energy = "gas", Unit = "CCF", Blocks = [new() { UpTo = 300, Price = 1.1m }, new() { Price = 0.9m }], Riders = [new() { Name = "adjustment", PerUnit = -0.0097m }] },
        new() { From = "2026-05-01", Energy = "gas", Unit = "gallon", Price = 2.79m, KilowattHoursPerUnit = 26.6m },
        new() { From = "2026-01-01", Energy = "electricity", Unit = "kWh", Price = 0.3m }), "hotshop.json"));

    [Theory]
    [InlineData("\"unit\": \"m3\", \"price\": 0.98, \"standingChargePerMonth\": 14.50, \"taxes\": [ { \"name\": \"VAT\", \"percent\": 19 } ]")]
    [InlineData("\"perKilowattHour\": 0.11")]
    public void The_lists_that_the_documents_show_are_read(string fields)
    {
        var text = $$"""{ "site": "a", "appliances": [ { "id": "f", "kind": "furnace", "channels": [ { "id": "t", "quantity": "temperature" } ] } ], "prices": [ { "from": "2026-04-01", "energy": "gas", {{fields}} } ] }""";
        Assert.Empty(ConfigurationCheck.Problems(ConfigurationFile.Parse(text, "hotshop.json"), "hotshop.json"));
    }
}
