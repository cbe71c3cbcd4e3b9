namespace HotShop.Monitor.Wire;

/// <summary>MQTT topic filters (MQTT 5.0, 4.7): <c>+</c> is one level, <c>#</c> all that follow.</summary>
static class TopicFilter
{
    /// <summary>Whatever the second lets through, the first does too. A topic without wildcards is the filter of itself.</summary>
    public static bool Covers(string filter, string other)
    {
        // Wildcards at the start do not reach the broker's own topics (4.7.2).
        if (other.StartsWith('$') && filter[0] is '+' or '#') return filter == other;
        string[] wide = filter.Split('/'), narrow = other.Split('/');
        for (var i = 0; i < wide.Length; i++)
        {
            // 'a/#' takes 'a' itself as well (4.7.1.2).
            if (wide[i] == "#") return true;
            if (i >= narrow.Length) return false;
            if (narrow[i] == "#" || (wide[i] != "+" && wide[i] != narrow[i])) return false;
        }
        return wide.Length == narrow.Length;
    }

    /// <summary>Why a text is no filter to listen with; null: it is one.</summary>
    public static string? ProblemWith(string filter)
    {
        if (filter.Length == 0) return "it is empty";
        if (filter.Contains('\0', StringComparison.Ordinal)) return "it has a null character";
        if (filter[0] == '$') return "topics that begin with '$' belong to the broker";
        var levels = filter.Split('/');
        for (var i = 0; i < levels.Length; i++)
        {
            if (levels[i].Length > 1 && levels[i].AsSpan().ContainsAny('+', '#')) return "'+' and '#' each stand alone in a level";
            if (levels[i] == "#" && i < levels.Length - 1) return "'#' stands at the end only";
        }
        return null;
    }
}
