using HotShop.Monitor.Money;

namespace HotShop.Monitor.Sums;

/// <summary>A figure as people read it.</summary>
/// <param name="Value">With its unit; the studio's habit first.</param>
/// <param name="Other">The same in the other system; null where all read the same.</param>
/// <param name="Interval">The 95 % interval; null for a number beside the sum.</param>
public sealed record ShownFigure(string Words, string Value, string? Other, string? Interval);

/// <summary>Writes figures as the studio's country and habits have it: as many digits as the interval is worth.</summary>
sealed class SumText(StudioFormat format)
{
    const string Space = "\u00a0";

    /// <summary>Digits of a number that has no interval, and of half an interval.</summary>
    const int DigitsOfExact = 4, DigitsOfDoubt = 2;

    public string DecimalMark => format.DecimalMark;

    public bool IsUs => format.IsUsFirst;

    public ShownFigure Of(SumFigure figure)
    {
        if (figure.IsMoney)
        {
            var amount = format.Shown((decimal)figure.Value, (decimal)((figure.High95!.Value - figure.Value) / HotShop.Physics.Statistics.Quantiles.Normal95));
            return new(figure.Words, amount.Text, null, amount.IntervalText);
        }
        var (first, second) = (figure.Measure.First(IsUs), figure.Measure.Second(IsUs));
        return new(figure.Words, In(first, figure), second is null ? null : In(second, figure),
            figure is { Low95: { } low, High95: { } high } ? $"{Number(first.Of(low), first, figure)} – {WithUnit(Number(first.Of(high), first, figure), first)}" : null);
    }

    string In(SumUnit unit, SumFigure figure) => WithUnit(Number(unit.Of(figure.Value), unit, figure), unit);

    static string WithUnit(string number, SumUnit unit) => unit.Words == "" ? number : number + Space + unit.Words;

    string Number(double value, SumUnit unit, SumFigure figure)
    {
        var half = figure is { Low95: { } low, High95: { } high } ? (high - low) / 2 / Math.Abs(unit.Scale) : 0;
        return format.Number(value, half > 0 ? Decimals(half, DigitsOfDoubt) : Decimals(Math.Abs(unit.Of(figure.Value)), DigitsOfExact));
    }

    static int Decimals(double size, int digits) => size > 0 ? Math.Clamp(digits - 1 - (int)Math.Floor(Math.Log10(size)), 0, 6) : 0;
}
