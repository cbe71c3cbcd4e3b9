using System.Net;
using NodaTime.Extensions;

namespace HotShop.Monitor.Notifications;

/// <param name="Person">Id of a person in the configuration.</param>
/// <param name="Outlet">push or mail, as listed by GET /api/outlets.</param>
public sealed record TestCallRequest(string? Person, string? Outlet);

public sealed record TestCallStarted(string Test);

static class NotificationEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/outlets", (OutletReport report, TimeProvider time) => report.All(time.GetUtcNow().ToInstant())).RequireAuthorization("Screen")
            .WithName("outlets").WithSummary("Every way to every phone, when a message last left by it and when a person last showed that it works");

        routes.MapPost("/api/outlets/test", async (TestCallRequest request, TestCalls tests, CancellationToken stop) =>
            await tests.Send(request.Person ?? "", request.Outlet ?? "", stop) is { } test
                ? Results.Accepted("/api/outlets", new TestCallStarted(test))
                : Results.Problem($"There is no way '{request.Outlet}' to a person '{request.Person}'. GET /api/outlets lists what there is.", statusCode: 400, title: "Unknown way to a phone"))
            .RequireAuthorization("Owner").WithName("outlets-test").WithSummary("Sends a test call the whole way; the button behind its link is the proof");

        // The token is all the right there is: no sign-in, no cookie, so nothing for another site to ride on.
        routes.MapGet("/receipt/{test}", (string test, string? t, TestCalls tests) => Page(tests.Look(test, t) is null ? Unknown : Ask(test, t!))).AllowAnonymous().ExcludeFromDescription();
        routes.MapPost("/receipt/{test}", async (string test, string? t, TestCalls tests, CancellationToken stop) =>
            Page(await tests.Confirm(test, t, stop) ? Thanks : Unknown)).AllowAnonymous().DisableAntiforgery().ExcludeFromDescription();
    }

    const string Unknown = "<h1>This link does not work</h1><p>It may be too old, or not complete. Send a new test from the studio's health page.</p>";
    const string Thanks = "<h1>Noted</h1><p>This way to your phone has been shown to work. Ask for a test again within a week.</p>";

    static string Ask(string test, string token) =>
        $"<h1>A test call</h1><p>Nothing is wrong.</p><form method=\"post\" action=\"/receipt/{WebUtility.HtmlEncode(Uri.EscapeDataString(test))}?t={WebUtility.HtmlEncode(token)}\"><button>It reached me</button></form>";

    static IResult Page(string body) => Results.Content($$"""
        <!doctype html><html lang="en"><head><meta charset="utf-8"><meta name="viewport" content="width=device-width,initial-scale=1"><meta name="color-scheme" content="light dark"><title>Test call</title>
        <style>body{font:20px/1.4 system-ui,sans-serif;max-width:30em;margin:0 auto;padding:24px}h1{font-weight:400}button{font:inherit;font-size:26px;width:100%;min-height:88px;border-radius:10px}</style></head>
        <body><main>{{body}}</main></body></html>
        """, "text/html; charset=utf-8");
}
