using UnitsNet.Units;

namespace HotShop.Monitor.Wire;

/// <summary>What a unit measures. Conversion is possible within one of them only.</summary>
enum Dimension { Temperature, Flow, Volume, Power, Energy, Pressure, Fraction, TraceFraction, Mass, LowerExplosiveLimit, Voltage, Length, State, Pulses }

/// <summary>
/// The units understood on the wire: UCUM codes first, then spellings that devices use. Case counts, as in UCUM: mW is no MW.
/// Standard cubic feet (scfh) are left out on purpose: they are referred to base conditions, actual ones are not.
/// </summary>
static class UnitSpellings
{
    public static readonly IReadOnlyDictionary<Dimension, (string Named, Enum Canonical, IReadOnlyDictionary<string, Enum> Units)> All =
        new Dictionary<Dimension, (string, Enum, IReadOnlyDictionary<string, Enum>)>
        {
            [Dimension.Temperature] = ("a temperature", TemperatureUnit.DegreeCelsius, Of(
                (TemperatureUnit.DegreeCelsius, "Cel °C ºC ℃ degC C"), (TemperatureUnit.DegreeFahrenheit, "[degF] °F ºF ℉ degF F"), (TemperatureUnit.Kelvin, "K"))),
            [Dimension.Flow] = ("a gas flow", VolumeFlowUnit.CubicMeterPerHour, Of(
                (VolumeFlowUnit.CubicMeterPerHour, "m3/h m3/hr"), (VolumeFlowUnit.CubicFootPerHour, "[cft_i]/h ft3/h ft3/hr cfh CFH cu.ft/h"),
                (VolumeFlowUnit.CubicFootPerMinute, "[cft_i]/min ft3/min cfm CFM"), (VolumeFlowUnit.LiterPerMinute, "L/min l/min lpm LPM"),
                (VolumeFlowUnit.LiterPerHour, "L/h l/h"), (VolumeFlowUnit.CubicMeterPerMinute, "m3/min"), (VolumeFlowUnit.CubicMeterPerSecond, "m3/s"))),
            [Dimension.Volume] = ("a gas volume", VolumeUnit.CubicMeter, Of(
                (VolumeUnit.CubicMeter, "m3"), (VolumeUnit.CubicFoot, "[cft_i] ft3 cf cu.ft"), (VolumeUnit.HectocubicFoot, "ccf CCF hcf"), (VolumeUnit.Liter, "L l"))),
            [Dimension.Power] = ("a power", PowerUnit.Kilowatt, Of(
                (PowerUnit.Kilowatt, "kW"), (PowerUnit.Watt, "W"), (PowerUnit.Megawatt, "MW"), (PowerUnit.BritishThermalUnitPerHour, "[Btu_IT]/h [Btu]/h Btu/h BTU/h Btu/hr BTU/hr"))),
            [Dimension.Energy] = ("an energy", EnergyUnit.KilowattHour, Of(
                (EnergyUnit.KilowattHour, "kW.h kWh kW·h"), (EnergyUnit.WattHour, "W.h Wh W·h"), (EnergyUnit.MegawattHour, "MW.h MWh MW·h"), (EnergyUnit.Joule, "J"),
                (EnergyUnit.Kilojoule, "kJ"), (EnergyUnit.Megajoule, "MJ"), (EnergyUnit.Gigajoule, "GJ"), (EnergyUnit.BritishThermalUnit, "[Btu_IT] [Btu] Btu BTU"))),
            [Dimension.Pressure] = ("a pressure", PressureUnit.Pascal, Of(
                (PressureUnit.Pascal, "Pa"), (PressureUnit.Hectopascal, "hPa"), (PressureUnit.Kilopascal, "kPa"), (PressureUnit.Millibar, "mbar"), (PressureUnit.Bar, "bar"),
                (PressureUnit.PoundForcePerSquareInch, "[psi] psi"), (PressureUnit.InchOfWaterColumn, "[in_i'H2O] inH2O inWC"), (PressureUnit.MillimeterOfWaterColumn, "mm[H2O] mmH2O"))),
            [Dimension.Fraction] = ("a fraction of the volume", RatioUnit.Percent, Of((RatioUnit.Percent, "% vol% %vol"), (RatioUnit.PartPerMillion, "[ppm] ppm"))),
            [Dimension.TraceFraction] = ("a fraction of the volume", RatioUnit.PartPerMillion, Of((RatioUnit.PartPerMillion, "[ppm] ppm"), (RatioUnit.Percent, "% vol% %vol"))),
            [Dimension.Mass] = ("a mass", MassUnit.Kilogram, Of(
                (MassUnit.Kilogram, "kg"), (MassUnit.Gram, "g"), (MassUnit.Pound, "[lb_av] lb lbs"), (MassUnit.Ounce, "[oz_av] oz"), (MassUnit.Tonne, "t"))),
            // Percent of the lower explosive limit is what gas sensors show; it has no code of its own in UCUM.
            [Dimension.LowerExplosiveLimit] = ("a percentage of the lower explosive limit", RatioUnit.Percent, Of((RatioUnit.Percent, "% %LEL %{LEL}"))),
            [Dimension.Voltage] = ("a voltage", ElectricPotentialUnit.Millivolt, Of(
                (ElectricPotentialUnit.Millivolt, "mV"), (ElectricPotentialUnit.Volt, "V"), (ElectricPotentialUnit.Microvolt, "uV µV μV"))),
            [Dimension.Length] = ("a length", LengthUnit.Centimeter, Of(
                (LengthUnit.Centimeter, "cm"), (LengthUnit.Millimeter, "mm"), (LengthUnit.Meter, "m"), (LengthUnit.Inch, "[in_i] in"))),
            [Dimension.State] = ("a state", RatioUnit.DecimalFraction, Of((RatioUnit.DecimalFraction, "1"))),
            [Dimension.Pulses] = ("a count of pulses", RatioUnit.DecimalFraction, Of((RatioUnit.DecimalFraction, "{pulse} {pulses} pulse pulses"))),
        };

    static Dictionary<string, Enum> Of(params ReadOnlySpan<(Enum Unit, string Spellings)> units)
    {
        var known = new Dictionary<string, Enum>(StringComparer.Ordinal);
        foreach (var (unit, spellings) in units)
            foreach (var spelling in spellings.Split(' ')) known.Add(spelling, unit);
        return known;
    }
}
