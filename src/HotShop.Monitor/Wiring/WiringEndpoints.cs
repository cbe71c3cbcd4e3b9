using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using Microsoft.AspNetCore.Http.HttpResults;
using NodaTime.Extensions;

namespace HotShop.Monitor.Wiring;

/// <summary>A channel to add: as in the configuration, with the appliance it belongs to.</summary>
public sealed record ChannelRequest
{
    public required string Appliance { get; init; }
    public required ChannelOptions Channel { get; init; }
}

/// <param name="TakesEffect">What happens now.</param>
public sealed record ChannelChange(string Channel, string TakesEffect);

static class WiringEndpoints
{
    /// <summary>Policy of the access rules, by name: this folder does not know them.</summary>
    const string OwnerOnly = "Owner";

    const string Soon = "the service begins again within a few seconds; what devices send meanwhile comes again";

    /// <summary>Needs the plan and, where channels can be added, a <see cref="FreshStart"/> beside it.</summary>
    public static IServiceCollection AddWiring(this IServiceCollection services) => services.AddSingleton<UnknownTopics>()
            .AddSingleton<IUnclaimedStage>(s => s.GetRequiredService<UnknownTopics>())
            .AddSingleton(s => new ChannelDesk(s.GetRequiredService<StudioPlan>(), s.GetRequiredService<UnknownTopics>(), s.GetService<FreshStart>())).AddSingleton<WiringAnswers>();

    public static void MapWiring(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/setup/unknown-topics", (WiringAnswers answers) => answers.All()).RequireAuthorization(OwnerOnly)
            .WithName("unknown-topics").WithSummary("Topics that no channel listens to, with what their last payload may mean, and the channels added so far").Produces<WiringAnswer>();

        app.MapPost("/api/setup/channels", (ChannelRequest request, ChannelDesk desk, HttpContext http, TimeProvider clock) =>
        {
            var fresh = Fresh(http, desk);
            if (desk.Add(request.Appliance, request.Channel, clock.GetCurrentInstant()) is { } problem) throw new BadHttpRequestException(problem);
            return Accepted(http, fresh, $"{request.Appliance}/{request.Channel.Id}");
        }).RequireAuthorization(OwnerOnly).WithName("add-channel").WithSummary("Adds a channel beside hotshop.json; the service begins again with it").Produces<ChannelChange>(StatusCodes.Status202Accepted);

        app.MapDelete("/api/setup/channels/{appliance}/{channel}", (string appliance, string channel, ChannelDesk desk, HttpContext http) =>
        {
            var fresh = Fresh(http, desk);
            if (!desk.Remove(appliance, channel)) throw new BadHttpRequestException($"no channel '{appliance}/{channel}' was added here; one of hotshop.json is taken out there", StatusCodes.Status404NotFound);
            return Accepted(http, fresh, $"{appliance}/{channel}");
        }).RequireAuthorization(OwnerOnly).WithName("remove-channel").WithSummary("Takes out a channel that was added here; its readings stay").Produces<ChannelChange>(StatusCodes.Status202Accepted);
    }

    /// <exception cref="BadHttpRequestException">Nothing can be added here, or the files would not start.</exception>
    static FreshStart Fresh(HttpContext http, ChannelDesk desk)
    {
        if (!desk.IsOpen) throw new BadHttpRequestException("the demo's studio is fixed: in your own ('hotshop init', 'hotshop run') this adds the channel", StatusCodes.Status409Conflict);
        var fresh = http.RequestServices.GetRequiredService<FreshStart>();
        try
        {
            fresh.Read();
        }
        catch (ConfigurationException wrong)
        {
            // Taking the channel in means to begin again, and with these files nothing would begin.
            throw new BadHttpRequestException($"nothing was changed, because the service could not begin again: {string.Join(" ", wrong.Problems)}", StatusCodes.Status409Conflict);
        }
        return fresh;
    }

    static JsonHttpResult<ChannelChange> Accepted(HttpContext http, FreshStart fresh, string channel)
    {
        var lifetime = http.RequestServices.GetRequiredService<IHostApplicationLifetime>();
        // The answer first, then the end.
        http.Response.OnCompleted(() =>
        {
            fresh.Ask(lifetime);
            return Task.CompletedTask;
        });
        return TypedResults.Json(new ChannelChange(channel, Soon), statusCode: StatusCodes.Status202Accepted);
    }
}
