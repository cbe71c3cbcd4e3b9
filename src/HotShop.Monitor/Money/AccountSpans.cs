using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>What kind of span days are, how it is called, and which one it is compared with. Pure.</summary>
static class AccountSpans
{
    public static SpanKind KindOf(LocalDate first, LocalDate last) => (first, last) switch
    {
        _ when first == last => SpanKind.Day,
        _ when first.DayOfWeek == IsoDayOfWeek.Monday && first.PlusDays(6) == last => SpanKind.Week,
        _ when first.Day == 1 && first.PlusMonths(1).PlusDays(-1) == last => SpanKind.Month,
        _ when first.DayOfYear == 1 && first.PlusYears(1).PlusDays(-1) == last => SpanKind.Year,
        _ => SpanKind.Other,
    };

    public static string Title(LocalDate first, LocalDate last, StudioFormat format) => KindOf(first, last) switch
    {
        SpanKind.Day => format.Day(first),
        SpanKind.Month => StudioFormat.Month(first),
        SpanKind.Year => StudioFormat.Year(first),
        _ => $"{format.Day(first)} to {format.Day(last)}",
    };

    /// <summary>Spans that a reader compares with: the one before of the same kind, and the same a year earlier.</summary>
    public static IEnumerable<(LocalDate First, LocalDate Last)> Earlier(LocalDate first, LocalDate last)
    {
        switch (KindOf(first, last))
        {
            case SpanKind.Month:
                yield return (first.PlusMonths(-1), first.PlusDays(-1));
                yield return (first.PlusYears(-1), first.PlusYears(-1).PlusMonths(1).PlusDays(-1));
                break;
            case SpanKind.Year:
                yield return (first.PlusYears(-1), first.PlusDays(-1));
                break;
            default:
                var days = Period.DaysBetween(first, last) + 1;
                yield return (first.PlusDays(-days), first.PlusDays(-1));
                break;
        }
    }

    /// <summary>The day of an earlier span that is as far along as <paramref name="until"/> is in the one that began on <paramref name="first"/>.</summary>
    public static LocalDate SamePlace(LocalDate first, LocalDate until, LocalDate earlierFirst, LocalDate earlierLast) =>
        LocalDate.Min(earlierLast, earlierFirst + (until - first));
}
