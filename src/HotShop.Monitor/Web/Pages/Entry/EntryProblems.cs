namespace HotShop.Monitor.Web.Pages.Entry;

/// <summary>What went wrong with a form of the sign-in, first-run or pairing page, as a sentence with what to do.</summary>
internal static class EntryProblems
{
    static readonly Dictionary<string, string> Sentences = new(StringComparer.Ordinal)
    {
        ["password"] = "That is not the password. Try again; after ten tries a minute's rest is needed.",
        ["owner"] = "Only the owner may open that page. Sign in with the owner's password.",
        ["code"] = "That code is not known, or its time is over. Take the newest one.",
        ["short"] = "The password is too short: take at least ten characters, a short sentence for example.",
        ["different"] = "The two passwords are not the same. Type them once more.",
        ["name"] = "Give the screen a name of up to forty characters, for example \"Wall by the bench\".",
    };

    /// <returns>Null where nothing went wrong or the key is none of ours.</returns>
    public static string? Sentence(string? key) => key is not null && Sentences.TryGetValue(key, out var sentence) ? sentence : null;
}
