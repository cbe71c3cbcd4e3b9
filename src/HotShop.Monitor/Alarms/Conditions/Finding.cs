using NodaTime;

namespace HotShop.Monitor.Alarms.Conditions;

internal enum Verdict
{
    /// <summary>Nothing is known: missing data neither raises nor clears.</summary>
    Unknown,

    /// <summary>By the mode or the programme this condition means nothing now.</summary>
    NotWanted,

    Fine,

    /// <summary>Inside the deadband: leaves things as they are.</summary>
    Between,

    Wrong,
}

/// <summary>What a rule finds at one moment.</summary>
/// <param name="Value">In the definition's unit.</param>
/// <param name="Limit">Where it differs from the definition's.</param>
/// <param name="OnDelay">Where it differs from the definition's.</param>
/// <param name="Start">When the condition began, where the rule knows better than the first sample.</param>
/// <param name="Detail">For the words: e.g. the gas that still flows.</param>
internal readonly record struct Finding(
    Verdict Verdict, double? Value = null, double? Limit = null, Duration? OnDelay = null, Instant? Start = null, string? Detail = null)
{
    public static readonly Finding Unknown = new(Verdict.Unknown);
    public static readonly Finding NotWanted = new(Verdict.NotWanted);

    /// <summary>A value against a limit it must not exceed.</summary>
    public static Finding Above(double value, double limit, double deadband) =>
        new(value > limit ? Verdict.Wrong : value < limit - deadband ? Verdict.Fine : Verdict.Between, value);
}
