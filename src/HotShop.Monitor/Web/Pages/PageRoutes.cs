namespace HotShop.Monitor.Web.Pages;

/// <summary>Where the pages live and what they need; the host calls both.</summary>
internal static class PageRoutes
{
    public static IServiceCollection AddPages(this IServiceCollection services)
    {
        services.AddRazorPages(options => options.RootDirectory = "/Web/Pages");
        services.AddSingleton<GlowTable>();
        return services;
    }

    public static void MapPages(this IEndpointRouteBuilder routes)
    {
        routes.MapRazorPages();
    }
}
