using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using NodaTime;

namespace HotShop.Monitor.Wire;

/// <summary>How a log entry without an id is known again when its message comes a second time.</summary>
/// <param name="Source">Beginning of the entry's id: <c>mqtt</c>, or <c>button-ID</c>.</param>
/// <param name="Digest">Of topic, payload, sender and packet number: the same delivery has the same.</param>
/// <param name="IsDated">The device gave a time, so the digest alone tells one entry from all others.</param>
/// <param name="CameAgain">The broker says that it is a repetition (DUP).</param>
/// <param name="Settle">A second entry of the same source within this time is the contact's bounce; zero for what is no button.</param>
public sealed record EntryDelivery(string Source, string Digest, bool IsDated, bool CameAgain, Duration Settle)
{
    const int DigestLetters = 24;

    /// <summary>What the ids of all deliveries of this one begin with. No id of a button holds the point, so 'pedal' is not the beginning of 'pedal-2'.</summary>
    public string Key => $"{Source}.{Digest}";

    /// <param name="arrivedAt">Tells two presses of the same button apart.</param>
    public string IdAt(Instant arrivedAt) =>
        IsDated ? Key : $"{Key}.{(arrivedAt - NodaConstants.UnixEpoch).BclCompatibleTicks.ToString(CultureInfo.InvariantCulture)}";

    /// <param name="source">As in the id.</param>
    /// <param name="isDated">Whether the payload holds the device's own time.</param>
    public static EntryDelivery Of(IncomingMessage message, string source, bool isDated, Duration settle)
    {
        // A time of its own makes the payload unique; without one only the numbering of the connection can tell a repetition from a second gather.
        var delivery = isDated ? "" : $"{message.Sender}\n{message.PacketNumber}\n";
        var digest = SHA256.HashData([.. Encoding.UTF8.GetBytes($"{message.Topic}\n{delivery}"), .. message.Payload]);
        return new(source, Convert.ToHexStringLower(digest)[..DigestLetters], isDated, message.Redelivered, settle);
    }
}
