using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Readings;

/// <summary>What is known about how a reading came; stored with it.</summary>
[Flags]
public enum ReadingMarks
{
    None = 0,

    /// <summary>The device gave no time: this is the arrival.</summary>
    ArrivalTime = 1,

    /// <summary>The device gave a time in the future or before 2020: the arrival stands instead.</summary>
    ImpossibleTime = 2,

    /// <summary>It came as a broker's last value.</summary>
    Retained = 4,

    /// <summary>It came too late to be live.</summary>
    Late = 8,

    /// <summary>Outside the channel's plausible range.</summary>
    Implausible = 16,

    /// <summary>The thermocouple's circuit is open or its voltage is outside the type's range.</summary>
    OpenCircuit = 32,

    /// <summary>A thermocouple's voltage whose terminals nobody measured at that time: no temperature can be told.</summary>
    NoTerminals = 64,

    /// <summary>It came from a file, not from its device.</summary>
    Imported = 128,
}

/// <summary>A reading that this transaction stores. Duplicates and refused rows never get here.</summary>
/// <param name="Unit">Unit of <paramref name="Value"/>; a thermocouple sent in mV appears twice, as mV and as Cel.</param>
/// <param name="IsLive">Recent on arrival and not retained: may ring.</param>
public sealed record StoredReading(
    ChannelPlan Channel, string Unit, Instant At, double Value, ReadingMarks Marks, bool IsLive, Instant ArrivedAt)
{
    /// <summary>In the unit of the channel's quantity (°C for a temperature), not a raw voltage.</summary>
    public bool IsCanonical => Unit == Channel.Quantity.CanonicalUnit();

    public bool IsPlausible => (Marks & (ReadingMarks.Implausible | ReadingMarks.OpenCircuit)) == 0;
}

/// <summary>Reacts to readings inside the transaction that stores them. Readings come in arrival order.</summary>
public interface IReadingStage
{
    void React(IReadOnlyList<StoredReading> readings, WriteScope scope);
}
