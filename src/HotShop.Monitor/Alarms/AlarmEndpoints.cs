using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Alarms.Late;
using HotShop.Monitor.Http;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using NodaTime.Extensions;

namespace HotShop.Monitor.Alarms;

/// <param name="Who">Name of whoever has it.</param>
sealed record AcknowledgeRequest(string? Who);

static class AlarmEndpoints
{
    const int LongestName = 80;

    /// <summary>Needs in the container: plan, store reader and writer, latest readings, modes, curves, health board, live feed and the service's clock.</summary>
    /// <param name="speed">Seconds of the service's clock per real second; 1 outside demos.</param>
    public static IServiceCollection AddAlarms(this IServiceCollection services, double speed = 1) => services
        .AddSingleton(AlarmPace.ForSpeed(speed)).AddSingleton<AlarmEngine>().AddSingleton<AlarmMemoryLoad>().AddSingleton<Surroundings>().AddSingleton<AlarmHistory>().AddSingleton<AlarmDesk>()
        .AddSingleton<IAlarmDesk>(s => s.GetRequiredService<AlarmDesk>())
        .AddSingleton<IReadingStage>(s => s.GetRequiredService<AlarmDesk>())
        .AddSingleton<FoundLater>().AddSingleton<IReadingStage>(s => s.GetRequiredService<FoundLater>())
        .AddSingleton<ITickStage>(s => s.GetRequiredService<AlarmDesk>());

    public static void MapAlarms(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/alarms", (IAlarmDesk alarms) => alarms.Current.Select(AlarmItem.Of))
            .WithName("alarms").WithSummary("Alarms that hold or wait for somebody, most urgent first");

        app.MapGet("/api/alarms/history", (string? from, string? to, IAlarmDesk alarms, TimeProvider clock) =>
        {
            var (start, end) = Ask.Span(from, to, clock.GetCurrentInstant() + NodaTime.Duration.FromMinutes(2));
            return alarms.History(start, end).Select(AlarmItem.Of);
        }).WithName("alarm-history").WithSummary("Every time an alarm held or waited in a span, the last day if none is named, newest first");

        app.MapPost("/api/alarms/occurrences/{id}/acknowledge", async (string id, AcknowledgeRequest? body, IAlarmDesk alarms, CancellationToken stop) =>
        {
            var who = body?.Who?.Trim();
            if (string.IsNullOrEmpty(who) || who.Length > LongestName)
                throw new BadHttpRequestException($"'who' is missing or longer than {LongestName} characters: send {{\"who\":\"name of whoever has it\"}}");
            return await alarms.Acknowledge(id, who, stop) is { } known
                ? AlarmItem.Of(known)
                : throw new BadHttpRequestException($"there is no occurrence '{id}': take 'occurrence' of an item of /api/alarms", StatusCodes.Status404NotFound);
        }).WithName("acknowledge").WithSummary("Somebody has it; a second time changes nothing");
    }
}
