namespace HotShop.Physics.Thermometry;

/// <summary>What an instrument reads of a couple that is wired or set up wrongly: signatures to compare a strange reading with. All in °C;
/// the instrument compensates for its own terminals and believes in its type.</summary>
/// <remarks>Computed from the reference functions of NIST Monograph 175 by the law of intermediate temperatures; <see langword="null"/>
/// where the instrument would find no temperature in its range.</remarks>
public static class WiringFault
{
    /// <summary>The right reading's voltage at the instrument's terminals, in mV.</summary>
    static double? Emf(Thermocouple couple, double hot, double cold) => couple.Millivolts(hot) - couple.Millivolts(cold);

    /// <summary>The couple's legs are exchanged at the instrument: falls as the furnace heats, and is soon below any range.</summary>
    public static double? PolarityReversed(Thermocouple couple, double junctionCelsius, double terminalCelsius)
    {
        ArgumentNullException.ThrowIfNull(couple);
        return Emf(couple, terminalCelsius, junctionCelsius) is { } emf ? couple.JunctionCelsius(emf, terminalCelsius) : null;
    }

    /// <summary>The extension lead's legs are exchanged: low by about twice the difference between head and instrument.</summary>
    /// <param name="headCelsius">Where couple and lead meet.</param>
    public static double? ExtensionReversed(Thermocouple couple, double junctionCelsius, double headCelsius, double terminalCelsius)
    {
        ArgumentNullException.ThrowIfNull(couple);
        return Emf(couple, junctionCelsius, headCelsius) - Emf(couple, headCelsius, terminalCelsius) is { } emf ? couple.JunctionCelsius(emf, terminalCelsius) : null;
    }

    /// <summary>Copper instead of extension lead: its two legs are alike and give no voltage, so the head's warmth is lost.</summary>
    /// <param name="headCelsius">Where couple and lead meet.</param>
    public static double? CopperLead(Thermocouple couple, double junctionCelsius, double headCelsius, double terminalCelsius)
    {
        ArgumentNullException.ThrowIfNull(couple);
        return Emf(couple, junctionCelsius, headCelsius) is { } emf ? couple.JunctionCelsius(emf, terminalCelsius) : null;
    }

    /// <summary>The legs touch on the way: there is a junction where they touch, and it is read instead.</summary>
    /// <param name="touchCelsius">Where they touch.</param>
    public static double? Shorted(Thermocouple couple, double touchCelsius, double terminalCelsius)
    {
        ArgumentNullException.ThrowIfNull(couple);
        return Emf(couple, touchCelsius, terminalCelsius) is { } emf ? couple.JunctionCelsius(emf, terminalCelsius) : null;
    }

    /// <summary>The instrument is set to another type than is wired.</summary>
    public static double? WrongType(Thermocouple wired, Thermocouple set, double junctionCelsius, double terminalCelsius)
    {
        ArgumentNullException.ThrowIfNull(wired);
        ArgumentNullException.ThrowIfNull(set);
        return Emf(wired, junctionCelsius, terminalCelsius) is { } emf ? set.JunctionCelsius(emf, terminalCelsius) : null;
    }
}
