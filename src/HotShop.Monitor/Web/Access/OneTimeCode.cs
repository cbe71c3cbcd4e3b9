using System.Security.Cryptography;
using System.Text;

namespace HotShop.Monitor.Web.Access;

/// <summary>
/// A short code that opens one door once: eight letters and digits (40 bits), gone after its time, its use, or five wrong tries.
/// Letters after Crockford's base 32, which has no I, L, O, U to mistake.
/// </summary>
sealed class OneTimeCode(TimeProvider time, TimeSpan lifetime)
{
    const string Letters = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
    const int Tries = 5;
    readonly Lock gate = new();
    string? code;
    DateTimeOffset until;
    int wrong;

    /// <summary>Makes a new code; the one before is void.</summary>
    /// <returns>In two groups of four, to be read aloud.</returns>
    public (string Code, DateTimeOffset Until) Issue()
    {
        lock (gate)
        {
            code = RandomNumberGenerator.GetString(Letters, 8);
            until = lifetime == Timeout.InfiniteTimeSpan ? DateTimeOffset.MaxValue : time.GetUtcNow() + lifetime;
            wrong = 0;
            return ($"{code[..4]}-{code[4..]}", until);
        }
    }

    /// <summary>Uses the code up.</summary>
    /// <returns>False for a wrong, used, expired or worn-out code.</returns>
    public bool Redeem(string? text)
    {
        lock (gate)
        {
            if (code is null || time.GetUtcNow() >= until) return false;
            if (!CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(Plain(text ?? "")), Encoding.UTF8.GetBytes(code)))
            {
                if (++wrong >= Tries) code = null;
                return false;
            }
            code = null;
            return true;
        }
    }

    public bool IsOpen
    {
        get { lock (gate) return code is not null && time.GetUtcNow() < until; }
    }

    static string Plain(string text) =>
        text.ToUpperInvariant().Replace("-", "", StringComparison.Ordinal).Replace(" ", "", StringComparison.Ordinal).Replace('O', '0').Replace('I', '1').Replace('L', '1');
}
