using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Notifications;

/// <summary>What a link lets its bearer do: act on one occurrence as one person. No session, no other data.</summary>
sealed record LinkClaim(string Occurrence, string Person, string Outlet, bool IsTest, Instant IssuedAt, Instant ExpiresAt);

/// <summary>Makes and checks the signed links of messages. Whoever holds one may answer for that occurrence; so no token is logged or stored.</summary>
sealed class NightLinks(LinkKey key, Uri baseAddress, LinkKey? previousKey = null)
{
    /// <summary>No link lives longer, whatever becomes of its alarm.</summary>
    public static readonly Duration Longest = Duration.FromDays(7);

    /// <summary>After the end of an alarm its links still open for so long.</summary>
    public static readonly Duration AfterTheEnd = Duration.FromHours(8);

    static readonly Duration ClockTolerance = Duration.FromMinutes(2);
    const string Version = "1";

    public Uri For(OutboxRow row)
    {
        var isTest = row.Kind == MessageKind.Test;
        var token = Make(new(row.Occurrence, row.Person, row.Outlet, isTest, row.CreatedAt, row.CreatedAt + Longest));
        return new Uri(baseAddress, $"{(isTest ? "receipt" : "night")}/{Uri.EscapeDataString(row.Occurrence)}?t={token}");
    }

    /// <summary>Payload and its HMAC-SHA256, both base64url, with a point between.</summary>
    public string Make(LinkClaim claim)
    {
        var payload = Encoding.UTF8.GetBytes(string.Join('\n', Version, key.Id, claim.IsTest ? "test" : "night", claim.Occurrence, claim.Person, claim.Outlet,
            Text(claim.IssuedAt), Text(claim.ExpiresAt)));
        return $"{Base64Url.EncodeToString(payload)}.{Base64Url.EncodeToString(key.Sign(payload))}";
    }

    /// <returns>Null for anything that is not a token of ours in its time: forged, cut, expired alike.</returns>
    public LinkClaim? Verify(string? token, Instant now)
    {
        if (token is null || token.Length > 1024 || token.Split('.') is not [var payloadText, var signatureText]) return null;
        if (Decode(payloadText) is not { } payload || Decode(signatureText) is not { } signature) return null;
        // Nothing of the payload is read before its signature is known to be ours.
        var isOurs = CryptographicOperations.FixedTimeEquals(key.Sign(payload), signature)
            | (previousKey is not null && CryptographicOperations.FixedTimeEquals(previousKey.Sign(payload), signature));
        if (!isOurs || Read(payload) is not { } claim) return null;
        return now + ClockTolerance >= claim.IssuedAt && now < claim.ExpiresAt ? claim : null;
    }

    /// <summary>Where links begin: the public address, else the address the pages listen on.</summary>
    public static Uri BaseAddress(HttpOptions http)
    {
        if (http.PublicAddress is { } address) return new Uri(address.EndsWith('/') ? address : address + "/");
        var listen = new Uri($"http://{http.Listen}/");
        // "Listen everywhere" is no address to write into a message; the machine's own name is the best guess there is.
        var isEverywhere = listen.Host is "0.0.0.0" or "[::]" or "::";
        return isEverywhere ? new UriBuilder(listen) { Host = Environment.MachineName }.Uri : listen;
    }

    static LinkClaim? Read(byte[] payload)
    {
        if (Encoding.UTF8.GetString(payload).Split('\n') is not [Version, _, var use, var occurrence, var person, var outlet, var issued, var expires]) return null;
        return new(occurrence, person, outlet, use == "test", Seconds(issued), Seconds(expires));
    }

    /// <summary>Only the one spelling we make: base64 leaves spare bits in which the same bytes could be written differently.</summary>
    static byte[]? Decode(string text)
    {
        try
        {
            var bytes = Base64Url.DecodeFromChars(text);
            return Base64Url.EncodeToString(bytes) == text ? bytes : null;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    static string Text(Instant instant) => instant.ToUnixTimeSeconds().ToString(CultureInfo.InvariantCulture);

    static Instant Seconds(string text) => Instant.FromUnixTimeSeconds(long.Parse(text, CultureInfo.InvariantCulture));
}
