namespace HotShop.Monitor.Alarms;

/// <summary>What can happen to an alarm.</summary>
public enum AlarmInput { ConditionTrue, ConditionFalse, Acknowledge }

public static class AlarmStates
{
    /// <summary>Condition and acknowledgement after ANSI/ISA-18.2-2016. No clock, no I/O.</summary>
    public static AlarmState Next(AlarmState state, AlarmInput input) => (state, input) switch
    {
        (AlarmState.Normal or AlarmState.ReturnedUnacknowledged, AlarmInput.ConditionTrue) => AlarmState.Unacknowledged,
        (AlarmState.Unacknowledged, AlarmInput.Acknowledge) => AlarmState.Acknowledged,
        (AlarmState.Unacknowledged, AlarmInput.ConditionFalse) => AlarmState.ReturnedUnacknowledged,
        (AlarmState.Acknowledged, AlarmInput.ConditionFalse) or (AlarmState.ReturnedUnacknowledged, AlarmInput.Acknowledge) => AlarmState.Normal,
        _ => state,
    };

    /// <summary>The condition holds.</summary>
    public static bool IsActive(this AlarmState state) => state is AlarmState.Unacknowledged or AlarmState.Acknowledged;

    public static string NameOf(this AlarmState state) => state switch
    {
        AlarmState.Unacknowledged => "unacknowledged",
        AlarmState.Acknowledged => "acknowledged",
        AlarmState.ReturnedUnacknowledged => "returned-unacknowledged",
        _ => "normal",
    };
}
