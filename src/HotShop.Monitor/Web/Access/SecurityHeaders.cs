namespace HotShop.Monitor.Web.Access;

/// <summary>What browsers are told not to do with our pages.</summary>
static class SecurityHeaders
{
    public const string ContentSecurityPolicy =
        "default-src 'self'; style-src 'self' 'unsafe-inline'; img-src 'self' data:; frame-ancestors 'none'; base-uri 'self'; form-action 'self'";

    public static void Set(HttpContext context)
    {
        var headers = context.Response.Headers;
        var isByLink = OriginCheck.IsByLink(context.Request.Path);
        headers.ContentSecurityPolicy = ContentSecurityPolicy;
        headers.XContentTypeOptions = "nosniff";
        // A link's address holds its token and must not travel. Elsewhere our own forms need their origin, or on plain http they would all say "null".
        headers["Referrer-Policy"] = isByLink ? "no-referrer" : "same-origin";
        if (isByLink) headers.CacheControl = "no-store";
    }
}
