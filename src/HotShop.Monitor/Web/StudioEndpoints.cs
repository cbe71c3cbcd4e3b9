using HotShop.Monitor.Configuration;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Web;

/// <summary>Chosen when the host is built, not in the configuration file.</summary>
/// <param name="IsDemo">Invented glass: shown on every page.</param>
/// <param name="Speed">How much faster than real time the service's clock runs.</param>
public sealed record RunChoices(bool IsDemo, double Speed);

public sealed record EmergencyAnswer(string Name, string Phone);

public sealed record StudioAnswer(string Site, string Name, string Zone, string Currency, string Units, Instant Now, double Speed, bool Demo, IReadOnlyList<EmergencyAnswer> EmergencyNumbers);

static class StudioEndpoints
{
    public static void MapStudio(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/studio", (StudioPlan plan, RunChoices run, TimeProvider clock) => Studio(plan, run, clock.GetUtcNow().ToInstant()))
            .WithName("studio").WithSummary("Name, zone, units and time of the studio");
        app.MapGet("/api/appliances", (ApplianceAnswers appliances, TimeProvider clock) => appliances.All(clock.GetUtcNow().ToInstant()))
            .WithName("appliances").WithSummary("Appliances with their modes and the newest value of each channel");
        app.MapGet("/api/setup/channels", (ApplianceAnswers appliances, TimeProvider clock) => appliances.All(clock.GetUtcNow().ToInstant())
                .SelectMany(a => a.Channels.Select(c => new { a.Appliance, a.Name, Channel = c })))
            .WithName("setup-channels").WithSummary("Every channel with its topic and newest value, for wiring");
        app.MapGet("/api/live", (LiveStream stream, HttpContext http) =>
        {
            http.Response.Headers["X-Accel-Buffering"] = "no";
            return TypedResults.ServerSentEvents(stream.Run(http.RequestAborted));
        }).WithName("live").WithSummary("Server-sent events: reading, alarm, log; each carries an array, at most four times a second");
        app.MapGet("/api/health", (HealthAnswers health) => health.All()).WithName("health").WithSummary("How the service itself is");
    }

    internal static StudioAnswer Studio(StudioPlan plan, RunChoices run, Instant now) => new(
        plan.Site, plan.Configuration.Name, plan.Configuration.Zone, plan.Configuration.Currency, plan.Configuration.Units, now, run.Speed, run.IsDemo,
        [.. plan.Configuration.EmergencyNumbers.Select(n => new EmergencyAnswer(n.Name, n.Phone))]);

    /// <summary>For supervisors: open to all, and say nothing about the studio.</summary>
    public static void MapProbes(this IEndpointRouteBuilder app)
    {
        app.MapGet("/healthz", () => TypedResults.Text("alive")).AllowAnonymous().ExcludeFromDescription();
        app.MapGet("/readyz", (HealthAnswers health) =>
        {
            var reasons = health.NotReady();
            return TypedResults.Json(new { ready = reasons.Count == 0, reasons }, statusCode: reasons.Count == 0 ? 200 : 503);
        }).AllowAnonymous().ExcludeFromDescription();
    }
}
