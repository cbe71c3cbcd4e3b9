using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

public sealed record FlueOptions
{
    [Description("dry where the analyser dries its sample, wet where a probe sits in the flue gas itself.")]
    public string Sample { get; init; } = "dry";

    [Description("Channel of this appliance that measures the flue gas where it leaves the chamber, before any air is mixed in. Left out: excess air alone is told.")]
    public string? Temperature { get; init; }

    [Description("Channel of this appliance that measures the air for burning, behind a recuperator. Left out: airCelsius.")]
    public string? AirTemperature { get; init; }

    [Description("Temperature of the air for burning in °C, where no channel measures it.")]
    public double AirCelsius { get; init; } = 25;

    [Description("How far off the oxygen reading may be, in points of per cent, 0 to 2.")]
    public double OxygenUncertaintyPercent { get; init; } = new HotShop.Physics.Combustion.FlueDoubts().OxygenPercent;

    [Description("How far off the flue temperature may be, in K. A bare couple sees cooler walls and reads low.")]
    public double TemperatureUncertaintyKelvins { get; init; } = new HotShop.Physics.Combustion.FlueDoubts().FlueKelvin;
}
