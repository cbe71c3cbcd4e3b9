using System.Net;
using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Authorization;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.StaticAssets;

namespace HotShop.Monitor.Web.Access;

static class AccessSetup
{
    public const string Pairing = "pairing", WallClock = "access-wall-clock";

    /// <summary>Pages that nobody needs to be signed in for: those that sign in, those opened by a signed link, and the probes.</summary>
    static readonly string[] open = ["/signin", "/first-run", "/pair", "/night", "/receipt", "/healthz", "/readyz"];

    /// <param name="wallClock">Cookies and codes live in real time, even where the service's clock is scaled for a demo.</param>
    /// <exception cref="ArgumentException">Open access was asked for beyond loopback.</exception>
    public static IServiceCollection AddAccess(this IServiceCollection services, AccessOptions options, TimeProvider wallClock)
    {
        if (options is { IsOpen: true, IsLoopbackOnly: false })
            throw new ArgumentException($"without sign-in the pages listen on this computer alone, not on {options.Listen}", nameof(options));
        var file = new AccessFile(options.DataDirectory);
        services.AddSingleton(options).AddSingleton(file);
        services.AddKeyedSingleton(WallClock, wallClock);
        services.AddKeyedSingleton(Pairing, new OneTimeCode(wallClock, TimeSpan.FromMinutes(10)));
        services.AddSingleton(s => new FirstRunCode(file, options, wallClock, s.GetRequiredService<ILogger<FirstRunCode>>()));
        services.AddDataProtection().PersistKeysToFileSystem(PrivateFolder(Path.Combine(options.DataDirectory, "keys"))).SetApplicationName("hotshop");
        services.AddAuthentication(CookieAuthenticationDefaults.AuthenticationScheme).AddCookie(cookie => Cookie(cookie, file, wallClock));
        services.AddAuthorizationBuilder()
            .AddPolicy(AccessPolicies.Owner, p => p.RequireRole(AccessPolicies.Owner))
            .AddPolicy(AccessPolicies.Screen, p => p.RequireRole(AccessPolicies.Owner, AccessPolicies.Screen))
            // Whatever says nothing about itself is for signed-in people: forgetting is safe.
            .SetFallbackPolicy(new AuthorizationPolicyBuilder().RequireAssertion(IsForAnyoneOrSignedIn).Build());
        services.AddAntiforgery(a => a.Cookie.Name = "hotshop-form");
        services.AddRateLimiter(limits =>
        {
            limits.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
            limits.GlobalLimiter = AttemptLimits.Make();
            limits.OnRejected = async (rejected, _) => await Results
                .Problem("Wait a minute and try again.", statusCode: StatusCodes.Status429TooManyRequests, title: "Too many attempts").ExecuteAsync(rejected.HttpContext);
        });
        return services;
    }

    /// <summary>Before any endpoint of the application; prints the set-up code where there is no owner yet.</summary>
    public static WebApplication UseAccess(this WebApplication app)
    {
        var options = app.Services.GetRequiredService<AccessOptions>();
        app.UseMiddleware<AccessGate>();
        app.UseRateLimiter();
        app.UseAuthentication();
        if (options.IsOpen)
            app.Use(async (context, next) =>
            {
                context.User = Visitors.Owner(null, "Demo");
                await next(context);
            });
        app.UseAuthorization();
        app.UseAntiforgery();
        AccessEndpoints.Map(app);
        app.Services.GetRequiredService<FirstRunCode>().Announce();
        return app;
    }

    static void Cookie(CookieAuthenticationOptions cookie, AccessFile file, TimeProvider wallClock)
    {
        cookie.TimeProvider = wallClock;
        cookie.Cookie.Name = "hotshop";
        cookie.Cookie.HttpOnly = true;
        // Lax: a link in a message must find the person signed in. Changing calls are checked for their origin.
        cookie.Cookie.SameSite = SameSiteMode.Lax;
        cookie.Cookie.SecurePolicy = CookieSecurePolicy.SameAsRequest;
        cookie.SlidingExpiration = true;
        cookie.LoginPath = "/signin";
        cookie.ReturnUrlParameter = "returnUrl";
        cookie.Events.OnValidatePrincipal = context => Visitors.Check(context, file);
        cookie.Events.OnRedirectToLogin = context => Ask(context, file.HasOwner ? context.RedirectUri : "/first-run", StatusCodes.Status401Unauthorized);
        cookie.Events.OnRedirectToAccessDenied = context => Ask(context, "/signin?problem=owner", StatusCodes.Status403Forbidden);
    }

    /// <summary>Programs get a status, people get a page.</summary>
    static Task Ask(RedirectContext<CookieAuthenticationOptions> context, string page, int status)
    {
        if (context.Request.Path.StartsWithSegments("/api") || !HttpMethods.IsGet(context.Request.Method))
            return Results.Problem(statusCode: status, title: status == StatusCodes.Status401Unauthorized ? "Sign in first" : "Only the owner may do this").ExecuteAsync(context.HttpContext);
        context.Response.Redirect(page);
        return Task.CompletedTask;
    }

    static bool IsForAnyoneOrSignedIn(AuthorizationHandlerContext context)
    {
        if (context.User.IsInRole(AccessPolicies.Owner) || context.User.IsInRole(AccessPolicies.Screen)) return true;
        return context.Resource is HttpContext http
            && (open.Any(p => http.Request.Path.StartsWithSegments(p)) || IsLocalScrape(http) || http.GetEndpoint()?.Metadata.GetMetadata<StaticAssetDescriptor>() is not null);
    }

    /// <summary>A collector of metrics cannot sign in: one on this computer need not, unless it speaks through a proxy for somebody elsewhere.</summary>
    static bool IsLocalScrape(HttpContext http) =>
        http.Request.Path.StartsWithSegments("/metrics")
        && http.Connection.RemoteIpAddress is { } from && IPAddress.IsLoopback(from)
        && !http.Request.Headers.ContainsKey("X-Forwarded-For") && !http.Request.Headers.ContainsKey("Forwarded");

    static DirectoryInfo PrivateFolder(string path) => OperatingSystem.IsWindows()
        ? Directory.CreateDirectory(path)
        : Directory.CreateDirectory(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
}
