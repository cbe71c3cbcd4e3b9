using HotShop.Monitor.Configuration;
using HotShop.Physics.Energy;
using HotShop.Physics.FuelGases;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Fuel;

/// <summary>The studio's gas: its gross heating value and how a volume at the meters becomes one at base conditions.</summary>
public sealed class StudioGas
{
    public StudioGas(GasOptions options)
    {
        var gas = options.InForce();
        Base = options.BaseConditions();
        Fuel = new FuelGas(gas.Name!, gas.GrossKilowattHoursPerCubicMetre!.Value, Base, gas.CarbonDioxideKilogramsPerKilowattHour!.Value);
        (Mixture, CarbonDioxideSource, CarbonDioxideYear) = (options.Mixture(), gas.CarbonDioxideSource!, gas.CarbonDioxideYear!.Value);
        // A meter that compensates temperature itself already counts at the base temperature: correct its pressure only.
        WorkedOutFactor = GasVolume.BaseFactor(options.LineGaugeMillibar * PascalsPerMillibar, Atmosphere.PressurePascals(options.AltitudeMetres), options.LineCelsius ?? Base.Celsius, Base);
        BillFactor = options.BillFactor;
        doubts = new GasDoubts(
            MeterPercent: 0, options.LineUncertaintyKelvin, options.LineUncertaintyMillibar * PascalsPerMillibar, HeatingValuePercent: options.GrossHeatingValueUncertaintyPercent);
        (linePascals, lineCelsius) = (options.LineGaugeMillibar * PascalsPerMillibar + Atmosphere.PressurePascals(options.AltitudeMetres), options.LineCelsius ?? Base.Celsius);
        EnergyRelative = BudgetOf(1, doubts).StandardUncertainty;
        VolumeRelative = BudgetOf(1, doubts with { HeatingValuePercent = 0 }).StandardUncertainty;
        HeatingValueRelative = BudgetOf(1, new GasDoubts(0, 0, 0, 0, doubts.HeatingValuePercent)).StandardUncertainty;
    }

    const double PascalsPerMillibar = 100;

    readonly GasDoubts doubts;
    readonly double linePascals, lineCelsius;

    Budget BudgetOf(double kilowattHours, GasDoubts of) =>
        new(kilowattHours, [.. EnergyBudgets.Gas(kilowattHours, linePascals, lineCelsius, of).Contributions.Where(c => c.StandardUncertainty > 0)]);

    /// <summary>Why a gross energy of this gas may be off whoever counted it, kWh: the line's conditions and the heating value.</summary>
    public Budget BudgetOf(double kilowattHours) => BudgetOf(kilowattHours, doubts);

    /// <summary>Relative standard uncertainty of a volume at base conditions that comes of the line's conditions, the same at all gas meters of the studio.</summary>
    public double VolumeRelative { get; }

    /// <summary>Relative standard uncertainty of the heating value.</summary>
    public double HeatingValueRelative { get; }

    /// <summary>The same of gross energy: with the heating value.</summary>
    public double EnergyRelative { get; }

    public FuelGas Fuel { get; }

    /// <summary>What burns.</summary>
    public GasMixture Mixture { get; }

    /// <summary>Where the factor of carbon dioxide is printed.</summary>
    public string CarbonDioxideSource { get; }

    public int CarbonDioxideYear { get; }

    public BaseConditions Base { get; }

    /// <summary>Cubic metres at base conditions in one at the meter, from pressure, temperature and altitude.</summary>
    public double WorkedOutFactor { get; }

    /// <summary>The one that the utility's bill applies, where the owner has written it down: it goes before ours.</summary>
    public double? BillFactor { get; }

    public double BaseFactor => BillFactor ?? WorkedOutFactor;

    public double ToBase(double lineCubicMetres) => lineCubicMetres * BaseFactor;
}
