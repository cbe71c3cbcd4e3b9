using Microsoft.AspNetCore.Diagnostics;

namespace HotShop.Monitor.Web.Pages;

/// <summary>Where the pages live and what they need; the host calls both.</summary>
internal static class PageRoutes
{
    public static IServiceCollection AddPages(this IServiceCollection services)
    {
        services.AddRazorPages(options => options.RootDirectory = "/Web/Pages");
        services.AddSingleton<GlowTable>().AddSingleton<FirstState>();
        // Readings shrink to a tenth. Event streams are not among the types that are compressed.
        services.AddResponseCompression();
        return services;
    }

    /// <summary>A missing page is answered with a page to people and with a problem (RFC 9457) to programs.</summary>
    public static async Task OnStatus(StatusCodeContext status)
    {
        var context = status.HttpContext;
        if (context.Response.StatusCode == StatusCodes.Status404NotFound && HttpMethods.IsGet(context.Request.Method)
            && !context.Request.Path.StartsWithSegments("/api") && context.Request.Headers.Accept.ToString().Contains("text/html", StringComparison.Ordinal))
            context.Response.Redirect("/problem/404");
        else
            await Results.Problem(statusCode: context.Response.StatusCode).ExecuteAsync(context);
    }

    public static void MapPages(this IEndpointRouteBuilder routes)
    {
        routes.MapRazorPages();
    }
}
