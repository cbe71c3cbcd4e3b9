using HotShop.Monitor.Configuration;
using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Monitor.Fuel;

/// <summary>The studio's gas: its gross heating value and how a volume at the meters becomes one at base conditions.</summary>
public sealed class StudioGas
{
    public StudioGas(GasOptions options)
    {
        Base = options.Base switch { "us" => BaseConditions.Us, "normal" => BaseConditions.Normal, _ => BaseConditions.Iso13443 };
        Fuel = new FuelGas(options.Name, options.GrossKilowattHoursPerCubicMetre, Base, options.CarbonDioxideKilogramsPerKilowattHour);
        // A meter that compensates temperature itself already counts at the base temperature: correct its pressure only.
        WorkedOutFactor = GasVolume.BaseFactor(options.LineGaugeMillibar * 100, Atmosphere.PressurePascals(options.AltitudeMetres), options.LineCelsius ?? Base.Celsius, Base);
        BillFactor = options.BillFactor;
    }

    public FuelGas Fuel { get; }

    public BaseConditions Base { get; }

    /// <summary>Cubic metres at base conditions in one at the meter, from pressure, temperature and altitude.</summary>
    public double WorkedOutFactor { get; }

    /// <summary>The one that the utility's bill applies, where the owner has written it down: it goes before ours.</summary>
    public double? BillFactor { get; }

    public double BaseFactor => BillFactor ?? WorkedOutFactor;

    public double ToBase(double lineCubicMetres) => lineCubicMetres * BaseFactor;
}
