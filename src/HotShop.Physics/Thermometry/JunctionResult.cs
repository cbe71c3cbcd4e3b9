namespace HotShop.Physics.Thermometry;

/// <summary>What a voltage says about the measuring junction: a temperature, or why there is none.</summary>
public abstract record JunctionResult
{
    JunctionResult() { }

    /// <summary>Temperature of the measuring junction, in °C (ITS-90).</summary>
    public sealed record Celsius(double Value) : JunctionResult;

    /// <summary>The voltage or the terminal temperature lies outside what the type's functions cover; the reason names
    /// both.</summary>
    public sealed record OutOfRange(string Reason) : JunctionResult;

    /// <summary>No healthy couple of this type gives such a voltage: the input was driven to its end, as burn-out detection
    /// does.</summary>
    public sealed record OpenCircuit(string Reason) : JunctionResult;
}
