using HotShop.Physics.Thermometry;
using HotShop.Simulator.Chance;
using HotShop.Simulator.Plant;

namespace HotShop.Simulator.Wire;

/// <summary>What the instruments make of the plant: voltages, noise, steps, meter errors and broken wires.</summary>
internal sealed class Instruments(StudioPlant plant, int seed)
{
    // Inputs with upscale burn-out: 21 mV is above anything type S gives (18.7 mV at 1768 °C); transmitters in °C stop at the end of
    // their type.
    const double OpenTypeSMillivolts = 21.0, OpenTypeRCelsius = 1768, OpenTypeKCelsius = 1372;

    static readonly Thermocouple TypeS = Thermocouple.OfType(ThermocoupleType.S);

    readonly Draws noise = new(seed, "noise");
    readonly double meterStartCubicMetres = Math.Round(new Draws(seed, "meter").Between(20_000, 70_000), 2);

    double TerminalCelsius => plant.RoomCelsius + 9 + 0.004 * plant.Furnace.Lining.HotFaceCelsius;

    public IReadOnlyList<Device> Devices(int sampleSeconds) =>
    [
        new(Quillmere.DeviceOf(Quillmere.Furnace), 0, sampleSeconds, FurnaceChannels()),
        new(Quillmere.DeviceOf(Quillmere.GloryHole), 2, sampleSeconds, GloryHoleChannels()),
        new(Quillmere.DeviceOf(Quillmere.FirstAnnealer), 4, sampleSeconds, FirstAnnealerChannels()),
        new(Quillmere.DeviceOf(Quillmere.SecondAnnealer), 6, sampleSeconds, SecondAnnealerChannels()),
        new(Quillmere.DeviceOf(Quillmere.Shop), 8, sampleSeconds, ShopChannels()),
    ];

    Channel[] FurnaceChannels()
    {
        var furnace = plant.Furnace;
        return
        [
            new NumberChannel(Quillmere.Furnace, "crown", "mV", 0.001, () => CrownMillivolts()),
            new NumberChannel(Quillmere.Furnace, "terminal", "Cel", 0.1, () => TerminalCelsius + noise.Normal(0.1)),
            new NumberChannel(Quillmere.Furnace, "setpoint", "Cel", 0.1, () => plant.HasMains ? furnace.Setpoint.Celsius : null),
            new NumberChannel(Quillmere.Furnace, "gas-flow", "m3/h", 0.001, () => Flow(furnace.Burner, plant.Hidden.FurnaceFlowFactor)),
            .. BurnerStates(Quillmere.Furnace, furnace.Burner),
        ];
    }

    Channel[] GloryHoleChannels()
    {
        var hole = plant.GloryHole;
        return
        [
            new NumberChannel(Quillmere.GloryHole, "chamber", "Cel", 0.1, () => Indicated(hole.Chamber, 0.6, OpenTypeRCelsius)),
            new NumberChannel(Quillmere.GloryHole, "gas-flow", "m3/h", 0.001, () => Flow(hole.Burner, plant.Hidden.GloryHoleFlowFactor)),
            .. BurnerStates(Quillmere.GloryHole, hole.Burner),
            new StateChannel(Quillmere.GloryHole, "door", () => hole.DoorIsOpen),
        ];
    }

    Channel[] FirstAnnealerChannels() =>
    [
        .. AnnealerChannels(Quillmere.FirstAnnealer, plant.FirstAnnealer),
        new StateChannel(Quillmere.FirstAnnealer, "relay", () => plant.FirstAnnealer.RelayIsOn),
    ];

    Channel[] SecondAnnealerChannels() =>
    [
        .. AnnealerChannels(Quillmere.SecondAnnealer, plant.SecondAnnealer),
        new NumberChannel(Quillmere.SecondAnnealer, "power", "kW", 0.001,
            () => Math.Max(0, plant.SecondAnnealer.Kilowatts * plant.Hidden.PowerMeterFactor * (1 + noise.Normal(0.003)))),
    ];

    Channel[] AnnealerChannels(string appliance, Annealer annealer) =>
    [
        new NumberChannel(appliance, "chamber", "Cel", 0.25, () => Indicated(annealer.Chamber, 0.2, OpenTypeKCelsius)),
        new NumberChannel(appliance, "setpoint", "Cel", 0.1, () => plant.HasMains ? annealer.SetpointCelsius : null),
    ];

    Channel[] ShopChannels() =>
    [
        new NumberChannel(Quillmere.Shop, "meter", "m3", 0.01, () => Math.Floor((meterStartCubicMetres + plant.MeteredCubicMetres * plant.Hidden.ShopMeterFactor) * 100) / 100),
        new StateChannel(Quillmere.Shop, "mains", () => plant.HasMains),
        new NumberChannel(Quillmere.Shop, "carbon-monoxide", "[ppm]", 0.1, () => Math.Max(0, plant.Air.CarbonMonoxidePartsPerMillion + noise.Normal(0.3))),
        new NumberChannel(Quillmere.Shop, "combustible-gas", "%", 0.1, () => Math.Max(0, plant.Air.CombustiblePercentOfLimit + noise.Normal(0.1))),
    ];

    static Channel[] BurnerStates(string appliance, Burner burner) =>
    [
        new StateChannel(appliance, "flame", () => burner.HasFlame),
        new StateChannel(appliance, "call-for-heat", () => burner.CallsForHeat),
        new StateChannel(appliance, "lock-out", () => burner.IsLockedOut),
    ];

    double CrownMillivolts()
    {
        if (plant.Furnace.Crown.IsOpen) return OpenTypeSMillivolts + noise.Normal(0.003);
        var junctionCelsius = Math.Clamp(plant.Furnace.Crown.IndicatedCelsius + noise.Normal(0.35), 0, 1760);
        return TypeS.Millivolts(junctionCelsius)!.Value - TypeS.Millivolts(TerminalCelsius)!.Value;
    }

    double Indicated(Couple couple, double noiseKelvin, double openCelsius) =>
        couple.IsOpen ? openCelsius : couple.IndicatedCelsius + noise.Normal(noiseKelvin);

    double Flow(Burner burner, double factor) =>
        Math.Max(0, plant.Metered(burner.GasCubicMetresPerHour) * factor * (1 + noise.Normal(0.004)));
}
