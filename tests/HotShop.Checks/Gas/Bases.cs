using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;

namespace HotShop.Checks.Gas;

static class Bases
{
    /// <summary>A tabulated temperature at 101.325 kPa.</summary>
    public static BaseConditions At(ReferenceTemperature temperature) => new($"{temperature.Celsius():0.#} °C, 101.325 kPa", temperature.Celsius(), Atmosphere.StandardPascals);

    /// <summary>60 °F at 14.696 psia.</summary>
    public static GasReference Gpa { get; } = new(ReferenceTemperature.Fahrenheit60, new BaseConditions("60 °F, 14.696 psia", BaseConditions.Us.Celsius, 14.696 * EnergyUnits.PascalsPerPsi));
}
