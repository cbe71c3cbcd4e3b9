using System.Net;
using HotShop.Monitor.Configuration;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Mvc;

namespace HotShop.Monitor.History.Local;

/// <summary>
/// Where commands on this computer come in while the service has the store. They show that they may read the data folder by the key in it, and
/// they come from this computer itself. They send the rows, never the path of a file: the service opens nothing for them.
/// </summary>
sealed class LocalDoor(StudioPlan plan, IServer server) : IHostedLifecycleService
{
    volatile LocalKey? key;

    public Task StartedAsync(CancellationToken cancellationToken)
    {
        if (server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() is not { } address) return Task.CompletedTask;
        key = LocalKey.Make(ForThisComputer(address));
        key.Write(plan.DataDirectory);
        return Task.CompletedTask;
    }

    /// <summary>A server that listens everywhere is reached on loopback.</summary>
    static string ForThisComputer(string address) => address.Replace("//0.0.0.0:", "//127.0.0.1:", StringComparison.Ordinal).Replace("//[::]:", "//[::1]:", StringComparison.Ordinal);

    public Task StoppingAsync(CancellationToken cancellationToken)
    {
        if (key is not null) LocalKey.Remove(plan.DataDirectory);
        key = null;
        return Task.CompletedTask;
    }

    public Task StartAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StartingAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    public Task StoppedAsync(CancellationToken cancellationToken) => Task.CompletedTask;

    bool Lets(HttpContext call) =>
        call.Connection.RemoteIpAddress is { } from && (IPAddress.IsLoopback(from) || from.Equals(call.Connection.LocalIpAddress))
        && !call.Request.Headers.ContainsKey("X-Forwarded-For") && !call.Request.Headers.ContainsKey("Forwarded")
        && key is { } ours && ours.Is(call.Request.Headers[LocalKey.Header]);

    /// <summary>Endpoints for commands on this computer, of any size, beside the sign-in of people.</summary>
    public static RouteGroupBuilder Group(IEndpointRouteBuilder app)
    {
        var group = app.MapGroup("/api/local").AllowAnonymous().ExcludeFromDescription().WithMetadata(new DisableRequestSizeLimitAttribute());
        group.AddEndpointFilter(async (call, next) => call.HttpContext.RequestServices.GetRequiredService<LocalDoor>().Lets(call.HttpContext)
            ? await next(call)
            : TypedResults.Problem("Run the command as a user who may read the data folder, on the computer of the service.", statusCode: StatusCodes.Status403Forbidden, title: "Only for commands on this computer"));
        return group;
    }
}
