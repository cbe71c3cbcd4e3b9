using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using NodaTime.Extensions;

namespace HotShop.Monitor.Handover;

/// <param name="Who">Name of whoever takes over.</param>
sealed record TakeOverRequest(string? Who);

/// <param name="Occurrence">Which trouble, as <c>occurrence</c> of the answer's troubles.</param>
/// <param name="Text">Why it came about.</param>
sealed record CauseRequest(string? Occurrence, string? Text, string? Who);

static class HandoverEndpoints
{
    public static void MapHandover(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/handover", (string? at, StudioPlan plan, HandoverBook book, HandoverWords words, TimeProvider clock) =>
            HandoverAnswer.Of(book.Of(Ask.Time(at, "at", clock.GetCurrentInstant())), words, plan.Site))
            .WithName("handover").WithSummary("What happened since the evening before, in facts and words, now or on a morning of the past");

        app.MapPost("/api/handover/take", async (TakeOverRequest? body, NightCalendar calendar, Takeover takeover, HandoverBook book, HandoverWords words, StudioPlan plan, TimeProvider clock, CancellationToken stop) =>
        {
            var now = clock.GetCurrentInstant();
            if (await takeover.Take(calendar.Of(now).Morning, body?.Who, now, stop) is { } problem) throw new BadHttpRequestException($"'who': {problem}");
            return HandoverAnswer.Of(book.Of(now), words, plan.Site);
        }).WithName("take-over").WithSummary("Somebody has read this morning's handover and takes over; a note in the log says so");

        app.MapPost("/api/handover/cause", async (CauseRequest? body, IAlarmDesk alarms, Takeover takeover, TimeProvider clock, CancellationToken stop) =>
        {
            if (body?.Occurrence is not { } id || alarms.Find(id) is not { } occurrence)
                throw new BadHttpRequestException($"there is no occurrence '{body?.Occurrence}': take 'occurrence' of a trouble of /api/handover", StatusCodes.Status404NotFound);
            if (await takeover.Explain(occurrence.Appliance, id, body.Text, body.Who, clock.GetCurrentInstant(), stop) is { } problem) throw new BadHttpRequestException(problem);
            return TypedResults.NoContent();
        }).WithName("explain").WithSummary("Writes down why a trouble came about, as a note in the log");
    }
}
