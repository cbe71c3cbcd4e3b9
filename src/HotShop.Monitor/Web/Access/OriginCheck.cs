namespace HotShop.Monitor.Web.Access;

/// <summary>What a browser says about where a call comes from.</summary>
/// <param name="FetchSite">Sec-Fetch-Site; browsers send it to https and localhost only.</param>
/// <param name="Origin">Origin; browsers send it with every post to another site.</param>
sealed record CallerHeaders(string Method, PathString Path, HostString Host, string? FetchSite, string? Origin, string? Referrer);

/// <summary>
/// A call that changes something must come from our own pages, on loopback too: any web page in the owner's browser can post to localhost.
/// Sources: Fetch standard (Origin, "null"), W3C Fetch Metadata (Sec-Fetch-Site).
/// </summary>
static class OriginCheck
{
    /// <returns>Null when the call may go on, else why not.</returns>
    public static string? Objection(CallerHeaders caller, Uri? publicAddress)
    {
        if (HttpMethods.IsGet(caller.Method) || HttpMethods.IsHead(caller.Method) || HttpMethods.IsOptions(caller.Method)) return null;
        // Another port of localhost is the "same site", so only the same origin will do. "none" is the person's own doing.
        if (caller.FetchSite is { } site and not ("same-origin" or "none")) return $"the call comes from another place (Sec-Fetch-Site: {site})";
        if (caller.Origin is { } origin)
        {
            if (origin != "null") return IsOurs(origin, caller.Host, publicAddress) ? null : $"the call comes from {Shown(origin)}";
            // A page without referrer says "null". There the signed link in the address is the right, and no cookie is asked.
            return caller.FetchSite == "same-origin" || IsByLink(caller.Path) ? null : "the call does not say where it comes from (Origin: null)";
        }
        // No browser of today posts without Origin; a program does, and no other site rides on a program.
        return caller.FetchSite is not null || caller.Referrer is not { } referrer || IsOurs(referrer, caller.Host, publicAddress)
            ? null : $"the call comes from {Shown(referrer)}";
    }

    /// <summary>Pages opened by a signed link alone.</summary>
    public static bool IsByLink(PathString path) => path.StartsWithSegments("/night") || path.StartsWithSegments("/receipt");

    static bool IsOurs(string text, HostString host, Uri? publicAddress)
    {
        if (!Uri.TryCreate(text, UriKind.Absolute, out var from) || from.Scheme is not ("http" or "https")) return false;
        if (publicAddress is not null && from.Scheme == publicAddress.Scheme && IsSameAuthority(from, publicAddress)) return true;
        return Uri.TryCreate($"{from.Scheme}://{host.Value}/", UriKind.Absolute, out var ours) && IsSameAuthority(from, ours);
    }

    static bool IsSameAuthority(Uri a, Uri b) => a.Port == b.Port && string.Equals(a.Host, b.Host, StringComparison.OrdinalIgnoreCase);

    static string Shown(string origin) => Uri.TryCreate(origin, UriKind.Absolute, out var from) ? from.GetLeftPart(UriPartial.Authority) : "an unreadable origin";
}
