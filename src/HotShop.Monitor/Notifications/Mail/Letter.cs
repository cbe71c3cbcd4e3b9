namespace HotShop.Monitor.Notifications.Mail;

/// <summary>A mail that is no call: a report, a handover. It never wakes anybody and is never repeated until somebody answers.</summary>
/// <param name="Key">Names the letter for ever, e.g. <c>report/2026-10</c>: one person gets one key once, and every attempt has the same message id.</param>
/// <param name="Text">Plain text, complete: whoever reads no HTML misses nothing.</param>
/// <param name="Html">The same words as a page for mail programs; null for none.</param>
sealed record Letter(string Key, string Subject, string Text, string? Html = null)
{
    public IReadOnlyList<Enclosure> Enclosures { get; init; } = [];
}

/// <param name="MediaType">Such as <c>application/pdf</c>.</param>
sealed record Enclosure(string FileName, string MediaType, byte[] Content);
