using System.Globalization;
using System.Text;
using NodaTime;

namespace HotShop.Simulator.Truth;

/// <summary>Lowest, mean and highest of a quantity, sampled every minute.</summary>
public sealed class Spread
{
    double sum;

    public int Count { get; private set; }

    public double Lowest { get; private set; } = double.PositiveInfinity;

    public double Highest { get; private set; } = double.NegativeInfinity;

    public double Mean => sum / Count;

    public void Add(double value)
    {
        Count++;
        sum += value;
        Lowest = Math.Min(Lowest, value);
        Highest = Math.Max(Highest, value);
    }
}

/// <summary>What some days at the studio looked like, from the hidden truth: the check that an ordinary run is ordinary.</summary>
public sealed class RunSummary
{
    readonly SortedDictionary<string, Spread> spreads = new(StringComparer.Ordinal);
    readonly HiddenTruth truth;
    readonly int days;

    RunSummary(SimulatedStudio studio, int days)
    {
        (truth, this.days) = (studio.Truth, days);
        var steadySince = studio.Now;
        var lastSetpoint = double.NaN;
        for (var minute = 0; minute < days * 1440; minute++)
        {
            Messages += studio.Advance(studio.Now + Duration.FromMinutes(1)).Count;
            var plant = studio.Plant;
            Add($"{Quillmere.Furnace} crown °C, {studio.ModeOf(Quillmere.Furnace)}", plant.Furnace.Crown.IndicatedCelsius);
            Add($"{Quillmere.Furnace} glass °C, {studio.ModeOf(Quillmere.Furnace)}", plant.Furnace.Pot.Celsius);
            Add($"{Quillmere.Furnace} gross kW, {studio.ModeOf(Quillmere.Furnace)}", plant.Furnace.Burner.BurntKilowatts);
            Add($"{Quillmere.GloryHole} chamber °C, {studio.ModeOf(Quillmere.GloryHole)}", plant.GloryHole.Chamber.IndicatedCelsius);
            if (studio.ModeOf(Quillmere.GloryHole) == "working")
                Add($"{Quillmere.GloryHole} gross kW, working", plant.GloryHole.Burner.BurntKilowatts);
            Add("pot kg", truth.GlassKilograms);
            Add("carbon monoxide ppm", plant.Air.CarbonMonoxidePartsPerMillion);

            if (plant.Furnace.Setpoint.Celsius != lastSetpoint) (lastSetpoint, steadySince) = (plant.Furnace.Setpoint.Celsius, studio.Now);
            if (studio.ModeOf(Quillmere.Furnace) == "holding" && plant.Furnace.Pot.Heap.IsEmpty && studio.Now - steadySince > Duration.FromHours(1))
            {
                Add("furnace held: deviation K", plant.Furnace.Crown.IndicatedCelsius - plant.Furnace.Setpoint.Celsius);
                Add("furnace held: gross kW", plant.Furnace.Burner.BurntKilowatts);
            }

            foreach (var appliance in new[] { Quillmere.FirstAnnealer, Quillmere.SecondAnnealer })
                if (plant.AnnealerNamed(appliance) is { SetpointCelsius: { } setpoint } annealer)
                {
                    var doing = annealer.IsRunningProgramme ? "on its curve" : studio.ModeOf(appliance);
                    Add($"{appliance} {doing}: deviation K", annealer.Chamber.IndicatedCelsius - setpoint);
                }
        }
    }

    public int Messages { get; private set; }

    public IReadOnlyDictionary<string, Spread> Spreads => spreads;

    public double FurnaceKilowatthoursPerDay => truth.FurnaceFuel.Kilowatthours / days;

    public double MeltedKilogramsPerDay => truth.MeltedKilograms / days;

    /// <summary>Gross fuel of the furnace per kilogram melted; 1 kWh/kg is 3.6 GJ/t.</summary>
    public double KilowatthoursPerKilogram => truth.FurnaceFuel.Kilowatthours / truth.MeltedKilograms;

    /// <summary>Runs a studio for some days and looks at it every minute.</summary>
    public static RunSummary Of(SimulationOptions options, int days) => new(new SimulatedStudio(options), days);

    public override string ToString()
    {
        var text = new StringBuilder();
        Line($"{"",-46}{"lowest",10}{"mean",10}{"highest",10}{"minutes",10}");
        foreach (var (name, s) in spreads) Line($"{name,-46}{s.Lowest,10:0.0}{s.Mean,10:0.0}{s.Highest,10:0.0}{s.Count,10}");
        Line($"furnace {FurnaceKilowatthoursPerDay:0} kWh/day gross, {MeltedKilogramsPerDay:0.0} kg melted/day");
        Line($"{KilowatthoursPerKilogram:0.0} kWh/kg = {KilowatthoursPerKilogram * 3.6:0} GJ/t");
        Line($"glory hole {truth.GloryHoleFuel.Kilowatthours / days:0} kWh/day");
        Line($"annealers {truth.FirstAnnealerKilowatthours / days:0.0} and {truth.SecondAnnealerKilowatthours / days:0.0} kWh/day");
        Line($"{truth.Gathers} gathers, {truth.UnloggedGathers} not logged ({truth.UnloggedKilograms:0.0} kg), {Messages} messages");
        return text.ToString();

        void Line(FormattableString line) => text.AppendLine(line.ToString(CultureInfo.InvariantCulture));
    }

    void Add(string name, double value)
    {
        if (!spreads.TryGetValue(name, out var spread)) spreads[name] = spread = new Spread();
        spread.Add(value);
    }
}
