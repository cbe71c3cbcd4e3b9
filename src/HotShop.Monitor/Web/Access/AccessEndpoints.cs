using System.Security.Claims;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Mvc;

namespace HotShop.Monitor.Web.Access;

/// <summary>Code that pairs one screen, within ten minutes.</summary>
public sealed record PairingCode(string Code, DateTimeOffset Until);

/// <param name="Role">Owner, Screen, or null for nobody.</param>
public sealed record Visitor(string? Role, string? Name);

/// <summary>
/// Takes the forms of the pages /signin, /first-run and /pair. Each form posts to its page's own address and holds the antiforgery field
/// (<c>@Html.AntiForgeryToken()</c>). Success leads on; failure leads back to the page with <c>?problem=</c> one of
/// <c>password</c>, <c>code</c>, <c>short</c>, <c>different</c>, <c>name</c>, for which the page has a sentence.
/// </summary>
static class AccessEndpoints
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        // Form: password, returnUrl (as it came in the address of the page; may be absent).
        routes.MapPost("/signin", SignIn).AllowAnonymous().ExcludeFromDescription();
        // Form: nothing but the antiforgery field.
        routes.MapPost("/signout", SignOut).AllowAnonymous().ExcludeFromDescription();
        // Form: code (printed in the log at the first start), password, passwordAgain.
        routes.MapPost("/first-run", FirstRun).AllowAnonymous().ExcludeFromDescription();
        // Form: code (made by the owner with POST /api/screens/pairing), name (of the screen, e.g. "Wall by the bench").
        routes.MapPost("/pair", Pair).AllowAnonymous().ExcludeFromDescription();

        routes.MapGet("/api/visitor", (ClaimsPrincipal user) => new Visitor(user.FindFirstValue(ClaimTypes.Role), user.Identity?.Name)).AllowAnonymous()
            .WithName("visitor").WithSummary("Who is signed in here, and with which right");
        var screens = routes.MapGroup("/api/screens").RequireAuthorization(AccessPolicies.Owner);
        screens.MapGet("", (AccessFile file) => file.Screens).WithName("screens").WithSummary("Paired screens");
        screens.MapPost("/pairing", ([FromKeyedServices(AccessSetup.Pairing)] OneTimeCode code) =>
        {
            var (text, until) = code.Issue();
            return new PairingCode(text, until);
        }).WithName("screens-pairing").WithSummary("A code that pairs one screen within ten minutes");
        screens.MapDelete("/{id}", (string id, AccessFile file) => file.Unpair(id) ? Results.NoContent() : Results.NotFound())
            .WithName("screens-unpair").WithSummary("Ends the pairing of a screen; it is out at its next call");
    }

    static async Task<IResult> SignIn(HttpContext context, AccessFile file, [FromForm] string? password, [FromForm] string? returnUrl)
    {
        var next = Local(returnUrl);
        if (!file.HasOwner) return SeeOther("/first-run");
        if (!file.IsOwner(password ?? "")) return SeeOther($"/signin?problem=password&returnUrl={Uri.EscapeDataString(next)}");
        await Enter(context, Visitors.Owner(file.OwnerStamp), TimeSpan.FromDays(30));
        return SeeOther(next);
    }

    static async Task<IResult> SignOut(HttpContext context, IFormCollection _)
    {
        await context.SignOutAsync(CookieAuthenticationDefaults.AuthenticationScheme);
        return SeeOther("/signin");
    }

    static async Task<IResult> FirstRun(
        HttpContext context, AccessFile file, FirstRunCode firstRun, [FromForm] string? code, [FromForm] string? password, [FromForm] string? passwordAgain)
    {
        if (file.HasOwner) return SeeOther("/signin");
        if (password is not { Length: >= AccessFile.ShortestPassword }) return SeeOther("/first-run?problem=short");
        if (password != passwordAgain) return SeeOther("/first-run?problem=different");
        if (!firstRun.Redeem(code)) return SeeOther("/first-run?problem=code");
        file.SetOwner(password);
        await Enter(context, Visitors.Owner(file.OwnerStamp), TimeSpan.FromDays(30));
        return SeeOther("/");
    }

    static async Task<IResult> Pair(
        HttpContext context, AccessFile file, [FromKeyedServices(AccessSetup.Pairing)] OneTimeCode pairing, TimeProvider time, [FromForm] string? code, [FromForm] string? name)
    {
        if (name?.Trim() is not { Length: > 0 and <= 40 } called) return SeeOther("/pair?problem=name");
        if (!pairing.Redeem(code)) return SeeOther("/pair?problem=code");
        // Browsers keep no cookie longer than 400 days; each visit renews it.
        await Enter(context, Visitors.Screen(file.Pair(called, time.GetUtcNow())), TimeSpan.FromDays(400));
        return SeeOther("/");
    }

    static Task Enter(HttpContext context, ClaimsPrincipal who, TimeSpan stays)
    {
        var from = context.RequestServices.GetRequiredKeyedService<TimeProvider>(AccessSetup.WallClock).GetUtcNow();
        return context.SignInAsync(CookieAuthenticationDefaults.AuthenticationScheme, who, new AuthenticationProperties { IsPersistent = true, AllowRefresh = true, IssuedUtc = from, ExpiresUtc = from + stays });
    }

    /// <summary>Only a path of ours: an address from outside would make the sign-in page a springboard.</summary>
    internal static string Local(string? address) =>
        address is { Length: > 0 } && address[0] == '/' && (address.Length == 1 || address[1] is not ('/' or '\\')) && !address.Any(char.IsControl) ? address : "/";

    static SeeOtherResult SeeOther(string address) => new(address);

    /// <summary>303: whatever was posted, the browser goes on with a GET.</summary>
    sealed class SeeOtherResult(string address) : IResult
    {
        public Task ExecuteAsync(HttpContext httpContext)
        {
            httpContext.Response.StatusCode = StatusCodes.Status303SeeOther;
            httpContext.Response.Headers.Location = address;
            return Task.CompletedTask;
        }
    }
}
