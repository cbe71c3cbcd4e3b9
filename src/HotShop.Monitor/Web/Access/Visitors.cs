using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;

namespace HotShop.Monitor.Web.Access;

/// <summary>Who a cookie stands for, and whether it still does.</summary>
static class Visitors
{
    const string Stamp = "stamp", ScreenId = "screen";

    public static ClaimsPrincipal Owner(string? stamp, string name = "Owner") =>
        Principal(name, AccessPolicies.Owner, new Claim(Stamp, stamp ?? ""));

    public static ClaimsPrincipal Screen(PairedScreen screen) => Principal(screen.Name, AccessPolicies.Screen, new Claim(ScreenId, screen.Id));

    /// <summary>A changed password ends the owner's cookies, an unpaired screen's cookie ends with it: at the next call, not at its expiry.</summary>
    public static async Task Check(CookieValidatePrincipalContext context, AccessFile file)
    {
        if (IsStill(context.Principal, file)) return;
        context.RejectPrincipal();
        await context.HttpContext.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
    }

    static bool IsStill(ClaimsPrincipal? who, AccessFile file) =>
        who is not null
        && (who.IsInRole(AccessPolicies.Owner)
            ? file.OwnerStamp is { } stamp && who.FindFirstValue(Stamp) == stamp
            : who.FindFirstValue(ScreenId) is { } id && file.IsPaired(id));

    static ClaimsPrincipal Principal(string name, string role, Claim further) =>
        new(new ClaimsIdentity([new(ClaimTypes.Name, name), new(ClaimTypes.Role, role), further], CookieAuthenticationDefaults.AuthenticationScheme));
}
