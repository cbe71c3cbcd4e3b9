namespace HotShop.Monitor.Web.Access;

/// <summary>Printed where only whoever runs the service can read it: proof that the first password is set by the right person.</summary>
sealed partial class FirstRunCode(AccessFile file, AccessOptions options, TimeProvider wallClock, ILogger<FirstRunCode> log)
{
    readonly OneTimeCode code = new(wallClock, Timeout.InfiniteTimeSpan);

    /// <summary>Prints a code where there is no owner yet.</summary>
    public void Announce()
    {
        if (!file.HasOwner && !options.IsOpen) Print(options.Listen, code.Issue().Code);
    }

    public bool Redeem(string? text)
    {
        if (code.Redeem(text)) return true;
        if (!code.IsOpen) Announce();   // worn out by wrong tries: the next one is in the log
        return false;
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "There is no owner yet. Open http://{Listen}/first-run and enter the set-up code {SetUpCode}")]
    partial void Print(string listen, string setUpCode);
}
