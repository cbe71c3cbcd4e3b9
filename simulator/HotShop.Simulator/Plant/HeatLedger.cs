namespace HotShop.Simulator.Plant;

/// <summary>
/// Every kilojoule that crossed the shell of an appliance since the start. In minus out is what the parts must hold more.
/// </summary>
internal sealed class HeatLedger
{
    /// <summary>Gross heat of the gas that entered, burnt or not.</summary>
    public double FuelKilojoules { get; set; }

    public double ElectricKilojoules { get; set; }

    /// <summary>Hot flue gas with its water as steam, unburnt gas, and air blown through.</summary>
    public double FlueKilojoules { get; set; }

    public double WallKilojoules { get; set; }

    /// <summary>Radiation and hot gas out of doors and gaps.</summary>
    public double OpeningKilojoules { get; set; }

    /// <summary>Into pieces that are reheated and cool down again outside.</summary>
    public double WorkKilojoules { get; set; }

    /// <summary>With glass that came in, cold or warm, above 0 °C.</summary>
    public double GlassInKilojoules { get; set; }

    public double GlassOutKilojoules { get; set; }

    /// <summary>With carbon dioxide leaving the batch.</summary>
    public double GasesKilojoules { get; set; }

    /// <summary>Turned into chemical energy by the reactions of batch.</summary>
    public double ReactionKilojoules { get; set; }

    public double InKilojoules => FuelKilojoules + ElectricKilojoules + GlassInKilojoules;

    public double OutKilojoules =>
        FlueKilojoules + WallKilojoules + OpeningKilojoules + WorkKilojoules + GlassOutKilojoules + GasesKilojoules + ReactionKilojoules;
}
