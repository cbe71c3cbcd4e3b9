namespace HotShop.Monitor.Web.Access;

/// <summary>Stands before everything else: headers, the name in the Host header, and where a changing call comes from.</summary>
sealed partial class AccessGate(RequestDelegate next, AccessOptions options, ILogger<AccessGate> log)
{
    readonly HostCheck hosts = new(options);

    public async Task InvokeAsync(HttpContext context)
    {
        // At the last moment, so that an error page, which clears what was set before, has them too.
        context.Response.OnStarting(() => { SecurityHeaders.Set(context); return Task.CompletedTask; });
        var request = context.Request;
        if (!hosts.Allows(request.Host))
        {
            WrongHost(request.Host.Value ?? "");
            await Refuse(context, StatusCodes.Status421MisdirectedRequest, "The pages do not answer to this name",
                "Open them by the address in http.listen or http.publicAddress, or add the name to http.allowedHosts.");
            return;
        }
        var caller = new CallerHeaders(request.Method, request.Path, request.Host, Header(context, "Sec-Fetch-Site"), Header(context, "Origin"), Header(context, "Referer"));
        if (OriginCheck.Objection(caller, options.PublicAddress) is { } objection)
        {
            Foreign(request.Method, request.Path, objection);
            await Refuse(context, StatusCodes.Status403Forbidden, "Not from our pages", $"Nothing was changed: {objection}. Behind a proxy, set http.publicAddress to the address the browser shows.");
            return;
        }
        await next(context);
    }

    static string? Header(HttpContext context, string name) => context.Request.Headers.TryGetValue(name, out var value) ? value.ToString() : null;

    static Task Refuse(HttpContext context, int status, string title, string detail) => Results.Problem(detail, statusCode: status, title: title).ExecuteAsync(context);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused a call to host '{Host}', which is none of ours")]
    partial void WrongHost(string host);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Refused {Method} {Path}: {Objection}")]
    partial void Foreign(string method, string path, string objection);
}
