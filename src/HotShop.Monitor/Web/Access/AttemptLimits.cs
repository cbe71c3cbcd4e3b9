using System.Threading.RateLimiting;

namespace HotShop.Monitor.Web.Access;

/// <summary>How often one address may try a password, a code or a link.</summary>
static class AttemptLimits
{
    public const int SignInsAMinute = 10, LinksAMinute = 120;

    public static PartitionedRateLimiter<HttpContext> Make() => PartitionedRateLimiter.Create<HttpContext, string>(context =>
    {
        var from = context.Connection.RemoteIpAddress?.ToString() ?? "unknown";
        var path = context.Request.Path;
        if (OriginCheck.IsByLink(path)) return Window($"link {from}", LinksAMinute);
        var isAttempt = HttpMethods.IsPost(context.Request.Method) && (path.StartsWithSegments("/signin") || path.StartsWithSegments("/first-run") || path.StartsWithSegments("/pair"));
        return isAttempt ? Window($"sign-in {from}", SignInsAMinute) : RateLimitPartition.GetNoLimiter("");
    });

    static RateLimitPartition<string> Window(string key, int aMinute) =>
        RateLimitPartition.GetFixedWindowLimiter(key, _ => new() { PermitLimit = aMinute, Window = TimeSpan.FromMinutes(1), QueueLimit = 0 });
}
