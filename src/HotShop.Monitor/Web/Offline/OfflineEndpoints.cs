using System.Text;

namespace HotShop.Monitor.Web.Offline;

static class OfflineEndpoints
{
    /// <summary>At the root, so that the worker may answer for the pages; open to all, as it holds nothing of the studio.</summary>
    public static void MapOffline(this IEndpointRouteBuilder app) =>
        app.MapGet("/worker.js", (OfflineShell shell, HttpContext http) =>
        {
            http.Response.Headers.CacheControl = "no-cache";
            return TypedResults.Text(shell.Worker, "text/javascript", Encoding.UTF8);
        }).AllowAnonymous().ExcludeFromDescription();
}
