using Microsoft.AspNetCore.Diagnostics;

namespace HotShop.Monitor.Web;

/// <summary>Turns what a caller did wrong into a problem after RFC 9457 that says so; what the service did wrong stays short.</summary>
sealed partial class Problems(IProblemDetailsService writer, ILogger<Problems> log) : IExceptionHandler
{
    public async ValueTask<bool> TryHandleAsync(HttpContext context, Exception exception, CancellationToken stop)
    {
        if (!context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal)) return false;
        var (status, title, detail) = exception switch
        {
            BadHttpRequestException bad => (bad.StatusCode, "The request cannot be answered", bad.Message),
            Store.StoreException store => (StatusCodes.Status503ServiceUnavailable, "The store cannot be used now", store.Message),
            _ => (StatusCodes.Status500InternalServerError, "The service made a mistake", "It is in the service's log; please report it."),
        };
        // A handled exception is not logged by the framework: a mistake of the service must not vanish.
        if (status >= 500) Failed(context.Request.Path, exception);
        context.Response.StatusCode = status;
        return await writer.TryWriteAsync(new ProblemDetailsContext { HttpContext = context, ProblemDetails = { Status = status, Title = title, Detail = detail } });
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "{Path} could not be answered")]
    private partial void Failed(string path, Exception cause);
}
