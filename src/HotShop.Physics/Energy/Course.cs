namespace HotShop.Physics.Energy;

/// <summary>How a value runs between two samples.</summary>
public enum Course
{
    /// <summary>Along a straight line: flow, power, temperature. Integrates by the trapezoid rule.</summary>
    Linear,

    /// <summary>Keeps its last value until the next sample: states, relays, setpoints.</summary>
    Held,
}
