using HotShop.Monitor.Configuration;
using HotShop.Physics.Energy;

namespace HotShop.Monitor.Fuel;

/// <summary>The studio's gas: its gross heating value and how a volume at the meters becomes one at base conditions.</summary>
public sealed class StudioGas
{
    readonly double baseFactor;

    public StudioGas(GasOptions options)
    {
        var conditions = options.Base switch { "us" => BaseConditions.Us, "normal" => BaseConditions.Normal, _ => BaseConditions.Iso13443 };
        Fuel = new FuelGas(options.Name, options.GrossKilowattHoursPerCubicMetre, conditions, options.CarbonDioxideKilogramsPerKilowattHour);
        // A meter that compensates temperature itself already counts at the base temperature: correct its pressure only.
        baseFactor = GasVolume.BaseFactor(options.LineGaugeMillibar * 100, Atmosphere.PressurePascals(options.AltitudeMetres), options.LineCelsius ?? conditions.Celsius, conditions);
    }

    public FuelGas Fuel { get; }

    public double ToBase(double lineCubicMetres) => lineCubicMetres * baseFactor;
}
