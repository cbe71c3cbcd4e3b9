using HotShop.Physics.Thermometry;

namespace HotShop.Checks.Thermometry;

/// <summary>What is read at 1150 °C where something is wired or set wrongly.</summary>
static class WiringFaultChecks
{
    const string Computed = Couples.Monograph + ", functions summed along the circuit and solved in a separate program";
    const double Pot = 1150, Head = 60, Room = 25;

    public static IEnumerable<Check> All =>
    [
        Fault("type K, extension lead reversed, head 60 °C, instrument 25 °C", "1073.8", () => WiringFault.ExtensionReversed(Couples.K, Pot, Head, Room)),
        Fault("type S, extension lead reversed, head 60 °C, instrument 25 °C", "1112.7", () => WiringFault.ExtensionReversed(Couples.S, Pot, Head, Room)),
        Fault("type K, copper lead, head 60 °C, instrument 25 °C", "1111.7", () => WiringFault.CopperLead(Couples.K, Pot, Head, Room)),
        Fault("type S, copper lead, head 60 °C, instrument 25 °C", "1131.4", () => WiringFault.CopperLead(Couples.S, Pot, Head, Room)),
        Fault("type K, polarity reversed, junction 60 °C, instrument 25 °C", "-11.1", () => WiringFault.PolarityReversed(Couples.K, Head, Room)),
        Fault("type K read as N", "1285.7", () => WiringFault.WrongType(Couples.K, Couples.N, Pot, 0)),
        Fault("type N read as K", "1018.0", () => WiringFault.WrongType(Couples.N, Couples.K, Pot, 0)),
        Fault("type R read as S", "1248.5", () => WiringFault.WrongType(Couples.R, Couples.S, Pot, 0)),
        Fault("type S read as R", "1063.2", () => WiringFault.WrongType(Couples.S, Couples.R, Pot, 0)),
        Fault("type S read as B", "1607.5", () => WiringFault.WrongType(Couples.S, Couples.B, Pot, 0)),
        Fault("type B read as S", "700.0", () => WiringFault.WrongType(Couples.B, Couples.S, Pot, 0)),
        Fault("type S read as K", "279.2", () => WiringFault.WrongType(Couples.S, Couples.K, Pot, 0)),
    ];

    static Check Fault(string what, string celsius, Func<double?> reads) => Check.Printed(what, celsius, "°C", Computed, () => reads() ?? double.NaN, Standing.Computed);
}
