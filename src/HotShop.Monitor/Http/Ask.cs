using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Http;

/// <summary>Reads what a caller asks for; what is wrong becomes a problem (RFC 9457) that says what came and what to send.</summary>
static class Ask
{
    /// <exception cref="BadHttpRequestException">The text is no RFC 3339 time.</exception>
    public static Instant Time(string? text, string name, Instant otherwise) => text is null ? otherwise
        : StrictTime.Parse(text) ?? throw new BadHttpRequestException($"'{name}' is '{text}': write a time like 2026-03-01T02:13:05Z");

    /// <summary>From and to; the last day where neither is given.</summary>
    public static (Instant From, Instant To) Span(string? from, string? to, Instant now)
    {
        var end = Time(to, "to", now);
        var start = Time(from, "from", end - Duration.FromDays(1));
        return start < end ? (start, end) : throw new BadHttpRequestException("'from' is not before 'to': swap them");
    }

    /// <summary>An appliance by id, with or without the site before it.</summary>
    public static AppliancePlan Appliance(StudioPlan plan, string? id)
    {
        if (string.IsNullOrEmpty(id)) throw new BadHttpRequestException($"'appliance' is missing: name one of {Names(plan)}");
        return plan.Appliance(WithoutSite(plan, id))
            ?? throw new BadHttpRequestException($"there is no appliance '{id}': name one of {Names(plan)}", StatusCodes.Status404NotFound);
    }

    /// <summary>A channel by <c>APPLIANCE/CHANNEL</c>, with or without the site before it.</summary>
    public static ChannelPlan Channel(StudioPlan plan, string? id)
    {
        if (string.IsNullOrEmpty(id)) throw new BadHttpRequestException("'channel' is missing: name one as APPLIANCE/CHANNEL");
        return plan.Channels.Find(WithoutSite(plan, id))
            ?? throw new BadHttpRequestException($"there is no channel '{id}': see /api/appliances for all", StatusCodes.Status404NotFound);
    }

    static string WithoutSite(StudioPlan plan, string id) =>
        id.StartsWith(plan.Site + "/", StringComparison.Ordinal) ? id[(plan.Site.Length + 1)..] : id;

    static string Names(StudioPlan plan) => string.Join(", ", plan.Appliances.Select(a => a.Id));
}
