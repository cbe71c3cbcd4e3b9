using System.Collections.Concurrent;
using System.Text.Json;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Demo;

/// <summary>What the demo's phone was sent, and when by the studio's clock.</summary>
public sealed record PhoneMessage(Instant At, JsonElement Content);

/// <summary>Stands in for the phones of the demo: takes pushes as a push server would, and shows the last of them.</summary>
sealed class DemoPhone(TimeProvider clock)
{
    const int Most = 200;
    readonly ConcurrentQueue<PhoneMessage> received = new();

    public void Receive(JsonElement content)
    {
        received.Enqueue(new PhoneMessage(clock.GetUtcNow().ToInstant(), content.Clone()));
        while (received.Count > Most) received.TryDequeue(out _);
    }

    public IReadOnlyList<PhoneMessage> Received => [.. received];
}

static class DemoPhoneEndpoints
{
    public static void MapDemoPhone(this IEndpointRouteBuilder app)
    {
        app.MapPost(DemoPlan.PhonePath, (JsonElement content, DemoPhone phone) => phone.Receive(content)).AllowAnonymous().DisableAntiforgery().ExcludeFromDescription();
        app.MapGet(DemoPlan.PhonePath, (DemoPhone phone) => phone.Received).ExcludeFromDescription();
    }
}
