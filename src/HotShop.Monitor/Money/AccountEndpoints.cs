using HotShop.Monitor.Configuration;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Money;

static class AccountEndpoints
{
    /// <summary>Money is the owner's: a paired screen hangs on the wall for everybody.</summary>
    internal const string OwnerOnly = "Owner";

    internal const string JsonType = "application/json; charset=utf-8";

    public static void MapMoney(this IEndpointRouteBuilder app)
    {
        app.MapBills();
        app.MapGet("/api/account", (string? month, string? year, string? first, string? last, StudioPlan plan, AccountBook book, TimeProvider clock) =>
        {
            var now = clock.GetUtcNow().ToInstant();
            var (from, to) = Span(month, year, first, last, now.InZone(plan.Zone).Date);
            return TypedResults.Bytes(AccountJson.Of(book.Of(from, to, now)), JsonType);
        }).RequireAuthorization(OwnerOnly).WithName("account").WithSummary("The owner's account of a month (month=2026-10), a year (year=2026) or any days (first= and last=)").Produces<Account>();
    }

    /// <summary>The days that are asked for; the month under way where nothing is.</summary>
    /// <exception cref="BadHttpRequestException">What is asked for is no span, is to come, or is longer than ten years.</exception>
    internal static (LocalDate First, LocalDate Last) Span(string? month, string? year, string? first, string? last, LocalDate today)
    {
        var (from, to) = (month, year, first, last) switch
        {
            ({ } one, null, null, null) => Whole(YearMonthPattern.Iso.Parse(one) is { Success: true } m ? m.Value : throw new BadHttpRequestException($"'month' is '{one}': write a month like 2026-10")),
            (null, { } one, null, null) => YearOf(one),
            (null, null, { } start, { } end) => (Day(start, "first"), Day(end, "last")),
            (null, null, { } day, null) => (Day(day, "first"), Day(day, "first")),
            (null, null, null, null) => Whole(today.ToYearMonth()),
            _ => throw new BadHttpRequestException("ask for one of 'month', 'year', or 'first' and 'last'"),
        };
        if (to < from) throw new BadHttpRequestException("'last' is before 'first': swap them");
        if (from > today) throw new BadHttpRequestException($"{from:uuuu-MM-dd} is still to come: ask for days that have begun");
        if (Period.DaysBetween(from, to) > 3660) throw new BadHttpRequestException("that is more than ten years: ask for fewer days");
        return (from, to);
    }

    static (LocalDate, LocalDate) Whole(YearMonth month) => (month.OnDayOfMonth(1), month.OnDayOfMonth(1).With(DateAdjusters.EndOfMonth));

    static (LocalDate, LocalDate) YearOf(string text) =>
        int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var year) && year is >= 2000 and <= 2200
            ? (new LocalDate(year, 1, 1), new LocalDate(year, 12, 31))
            : throw new BadHttpRequestException($"'year' is '{text}': write a year like 2026");

    static LocalDate Day(string text, string name) =>
        LocalDatePattern.Iso.Parse(text) is { Success: true } day ? day.Value : throw new BadHttpRequestException($"'{name}' is '{text}': write a day like 2026-10-01");
}
