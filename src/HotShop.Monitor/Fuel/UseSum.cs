using HotShop.Monitor.Readings;

namespace HotShop.Monitor.Fuel;

/// <summary>Energy of an appliance while its hours are added up, with what it is in doubt for.</summary>
/// <remarks>One meter's error is the same in all its hours: their standard uncertainties add. Gas and electricity have meters of their own (GUM, JCGM 100:2008, 5.1.2, 5.2.2).</remarks>
sealed class UseSum
{
    readonly Dictionary<(EnergyKind Kind, bool IsMeasured), Doubts> doubts = [];

    public double MeasuredKilowattHours { get; private set; }
    public double EstimatedKilowattHours { get; private set; }
    public double BaseCubicMetres { get; private set; }
    public double CarbonDioxideKilograms { get; private set; }
    public double CoveredSeconds { get; private set; }
    public int Resets { get; private set; }

    /// <summary>Exact; null once something had no price.</summary>
    public decimal? Cost { get; private set; } = 0m;

    /// <param name="cost">Of the hour; null where it has no price.</param>
    public void Add(FuelSource source, StudioGas gas, HourRow hour, double kilowattHours, double baseCubicMetres, decimal? cost)
    {
        if (source.IsMeasured) (MeasuredKilowattHours, CoveredSeconds) = (MeasuredKilowattHours + kilowattHours, CoveredSeconds + hour.CoveredSeconds);
        else EstimatedKilowattHours += kilowattHours;
        BaseCubicMetres += baseCubicMetres;
        var carbonDioxide = source.Kind == EnergyKind.Gas ? kilowattHours * gas.Fuel.CarbonDioxideKilogramsPerKilowattHour : 0;
        CarbonDioxideKilograms += carbonDioxide;
        Cost += cost;
        Resets += hour.Resets;

        if (!doubts.TryGetValue((source.Kind, source.IsMeasured), out var own)) doubts[(source.Kind, source.IsMeasured)] = own = new Doubts();
        own.Add(source.EnergyRelative(gas), source.VolumeRelative(gas), kilowattHours, baseCubicMetres, (double)(cost ?? 0), carbonDioxide);
    }

    public UseDoubt Doubt => new(
        Together(d => d.KilowattHours, isMeasured: true), Together(d => d.KilowattHours, isMeasured: false),
        Together(d => d.BaseCubicMetres), Together(d => d.Cost), Together(d => d.CarbonDioxideKilograms));

    double Together(Func<Doubts, double> of, bool? isMeasured = null) =>
        doubts.Where(d => isMeasured is null || d.Key.IsMeasured == isMeasured).Select(d => of(d.Value)).Aggregate(0.0, double.Hypot);

    sealed class Doubts
    {
        public double KilowattHours { get; private set; }
        public double BaseCubicMetres { get; private set; }
        public double Cost { get; private set; }
        public double CarbonDioxideKilograms { get; private set; }

        public void Add(double energyRelative, double volumeRelative, double kilowattHours, double baseCubicMetres, double cost, double carbonDioxideKilograms)
        {
            KilowattHours += energyRelative * Math.Abs(kilowattHours);
            BaseCubicMetres += volumeRelative * Math.Abs(baseCubicMetres);
            Cost += energyRelative * Math.Abs(cost);
            CarbonDioxideKilograms += energyRelative * Math.Abs(carbonDioxideKilograms);
        }
    }
}
