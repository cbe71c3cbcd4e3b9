using System.Globalization;

namespace HotShop.Simulator.Wire;

/// <summary>One topic of a device and what is sent on it.</summary>
internal abstract class Channel(string appliance, string name)
{
    public string Topic { get; } = $"hotshop/{Quillmere.Site}/{appliance}/{name}";

    /// <summary>The payload due at this step, or <see langword="null"/>.</summary>
    /// <param name="time">RFC 3339.</param>
    public abstract string? Payload(string time, bool isSampleDue, double elapsedSeconds);
}

/// <summary>A measured number, sent at every sample; nothing is sent where there is no value.</summary>
internal sealed class NumberChannel(string appliance, string name, string unit, double resolution, Func<double?> read) : Channel(appliance, name)
{
    readonly string format = resolution >= 1 ? "0" : "0." + new string('#', (int)Math.Ceiling(-Math.Log10(resolution) - 1e-9) + (IsQuarter(resolution) ? 1 : 0));

    public override string? Payload(string time, bool isSampleDue, double elapsedSeconds) =>
        isSampleDue && read() is { } value
            ? string.Concat("{\"value\":", (Math.Round(value / resolution) * resolution).ToString(format, CultureInfo.InvariantCulture),
                ",\"unit\":\"", unit, "\",\"time\":\"" + time + "\"}")
            : null;

    static bool IsQuarter(double resolution) => resolution == 0.25;
}

/// <summary>A state, sent when it changes and every 60 s.</summary>
internal sealed class StateChannel(string appliance, string name, Func<bool> read) : Channel(appliance, name)
{
    const double RepeatSeconds = 60;

    bool lastState;
    double sentSeconds = double.NegativeInfinity;

    public override string? Payload(string time, bool isSampleDue, double elapsedSeconds)
    {
        var state = read();
        if (state == lastState && elapsedSeconds - sentSeconds < RepeatSeconds) return null;
        (lastState, sentSeconds) = (state, elapsedSeconds);
        return state ? "{\"value\":true,\"time\":\"" + time + "\"}" : "{\"value\":false,\"time\":\"" + time + "\"}";
    }
}
