namespace HotShop.Monitor.Money;

/// <summary>An amount, whole in the currency's smallest unit, and the text that page, CSV and PDF show of it.</summary>
public readonly record struct Amount(decimal Value, string Text);

/// <summary>An amount that is only known within limits.</summary>
/// <param name="Low95">Lower end of the 95 % interval.</param>
/// <param name="IntervalText">Both ends, with a dash between.</param>
public sealed record AmountInterval(decimal Value, decimal Low95, decimal High95, string Text, string IntervalText);

/// <summary>A number, and the text with its unit that is shown of it.</summary>
public readonly record struct Figure(double Value, string Text);

/// <summary>A number that is only known within limits; its unit stands in the name of the field that has it.</summary>
public sealed record Interval(double Value, double Low95, double High95, string Text, string IntervalText);
