using System.Text.Json;
using HotShop.Monitor.Configuration;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Money;

static class BillEndpoints
{
    public static void MapBills(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/bills", (string? month, string? year, string? first, string? last, StudioPlan plan, AccountBook accounts, TimeProvider clock) =>
        {
            var now = clock.GetUtcNow().ToInstant();
            var today = now.InZone(plan.Zone).Date;
            var (from, to) = month is null && year is null && first is null ? (today.PlusYears(-1), today) : AccountEndpoints.Span(month, year, first, last, today);
            return TypedResults.Bytes(JsonSerializer.SerializeToUtf8Bytes(accounts.Bills(from, to, now), AccountJson.Options), AccountEndpoints.JsonType);
        }).RequireAuthorization(AccountEndpoints.OwnerOnly).WithName("bills").WithSummary("Bills beside what the meters say of the same days; the last year where no days are asked for").Produces<IReadOnlyList<BillComparison>>();

        app.MapPost("/api/bills", async (JsonElement body, BillBook bills, TimeProvider clock, CancellationToken stop) =>
        {
            if (body.ValueKind != JsonValueKind.Object) throw new BadHttpRequestException("send an object with energy, first, last, quantity and unit");
            foreach (var field in body.EnumerateObject())
                if (!BillRow.Columns.Contains(field.Name)) throw new BadHttpRequestException($"there is no '{field.Name}' in a bill: send {string.Join(", ", BillRow.Columns)}");
            var result = await bills.Add(BillRow.From(name => Text(body, name)), clock.GetUtcNow().ToInstant(), stop);
            if (result.Bill is not { } kept) throw new BadHttpRequestException(result.Refusal!);
            return TypedResults.Json(BillBook.Row(kept), statusCode: result.IsNew ? StatusCodes.Status201Created : StatusCodes.Status200OK);
        }).RequireAuthorization(AccountEndpoints.OwnerOnly).WithName("bill").WithSummary("Keeps a bill; the same id is the same bill, 'corrects' takes the place of another");
    }

    /// <summary>Numbers keep the digits they were sent with.</summary>
    static string? Text(JsonElement body, string name) => !body.TryGetProperty(name, out var value) ? null : value.ValueKind switch
    {
        JsonValueKind.String => value.GetString(),
        JsonValueKind.Number => value.GetRawText(),
        JsonValueKind.Null => null,
        _ => throw new BadHttpRequestException($"'{name}' is {value.ValueKind.ToString().ToLowerInvariant()}: send text or a number"),
    };
}
