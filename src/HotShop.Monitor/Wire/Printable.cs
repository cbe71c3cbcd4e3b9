using System.Text;

namespace HotShop.Monitor.Wire;

/// <summary>Payloads for people to look at.</summary>
static class Printable
{
    const int Most = 200;

    /// <summary>The beginning of a payload as text that can be shown: what is no printable character becomes '·'.</summary>
    public static string Beginning(byte[]? payload)
    {
        if (payload is null) return "";
        var text = Encoding.UTF8.GetString(payload.AsSpan(0, Math.Min(payload.Length, Most)));
        var shown = new StringBuilder(text.Length);
        foreach (var c in text) shown.Append(char.IsControl(c) || c == '\uFFFD' ? '·' : c);
        if (payload.Length > Most) shown.Append(System.Globalization.CultureInfo.InvariantCulture, $"… ({payload.Length} bytes)");
        return shown.ToString();
    }
}
