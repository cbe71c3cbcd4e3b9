using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Monitor.Fuel;

/// <summary>What a bill counts.</summary>
public enum BilledUnit { KilowattHour, Gigajoule, Therm, Dekatherm, CubicMetre, HundredCubicFeet, ThousandCubicFeet, PropaneLitre, PropaneGallon, PropaneKilogram }

public static class BilledUnits
{
    static readonly (BilledUnit Unit, string Name)[] all =
    [
        (BilledUnit.KilowattHour, "kWh"), (BilledUnit.Gigajoule, "GJ"), (BilledUnit.Therm, "therm"), (BilledUnit.Dekatherm, "dekatherm"),
        (BilledUnit.CubicMetre, "m3"), (BilledUnit.HundredCubicFeet, "CCF"), (BilledUnit.ThousandCubicFeet, "MCF"),
        (BilledUnit.PropaneLitre, "litre"), (BilledUnit.PropaneGallon, "gallon"), (BilledUnit.PropaneKilogram, "kilogram"),
    ];

    public static IEnumerable<string> Names => all.Select(u => u.Name);

    public static BilledUnit? Parse(string? name)
    {
        foreach (var known in all) if (known.Name == name) return known.Unit;
        return null;
    }

    public static string NameOf(this BilledUnit unit) => all[(int)unit].Name;

    /// <summary>kWh (gross) in one unit of energy or of propane; null for a volume of gas, which has its heating value elsewhere.</summary>
    public static double? KilowattHours(this BilledUnit unit) => unit switch
    {
        BilledUnit.KilowattHour => 1,
        BilledUnit.Gigajoule => 1000 / EnergyUnits.MegajoulesPerKilowattHour,
        BilledUnit.Therm => EnergyUnits.KilowattHoursPerTherm,
        BilledUnit.Dekatherm => EnergyUnits.KilowattHoursPerMillionBtu,
        BilledUnit.PropaneLitre => LiquidPropane.KilowattHoursPerLitre,
        BilledUnit.PropaneGallon => LiquidPropane.KilowattHoursPerGallon,
        BilledUnit.PropaneKilogram => LiquidPropane.KilowattHoursPerKilogram,
        _ => null,
    };

    /// <summary>m³ in one unit of volume of gas; null for the rest.</summary>
    public static double? CubicMetres(this BilledUnit unit) => unit switch
    {
        BilledUnit.CubicMetre => 1,
        BilledUnit.HundredCubicFeet => 100 * EnergyUnits.CubicMetresPerCubicFoot,
        BilledUnit.ThousandCubicFeet => 1000 * EnergyUnits.CubicMetresPerCubicFoot,
        _ => null,
    };
}
