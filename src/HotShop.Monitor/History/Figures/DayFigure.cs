using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Pot;
using NodaTime;

namespace HotShop.Monitor.History.Figures;

/// <summary>One figure of one day of the studio, in the unit its name says.</summary>
public sealed record DayFigure(LocalDate Day, string Appliance, string Name, double Value)
{
    public const string MeasuredEnergy = "energyKwh", EstimatedEnergy = "estimatedEnergyKwh", Gas = "volumeM3", Melted = "glassMeltedKg", Pot = "potKgAtMidnight";
}

/// <summary>What the service says of days that are over, computed by the books that answer every other question about them.</summary>
sealed class DayFigures(StudioPlan plan, PotBook pots)
{
    /// <param name="fuel">Reads the hours that are to be believed.</param>
    /// <param name="first">First day.</param>
    /// <param name="last">Last day, included.</param>
    public IEnumerable<DayFigure> Of(FuelBook fuel, LocalDate first, LocalDate last, Instant now)
    {
        Instant from = StartOf(first), to = StartOf(last.PlusDays(1));
        var days = Enumerable.Range(0, Period.DaysBetween(first, last) + 1).Select(first.PlusDays).ToList();
        foreach (var appliance in plan.Appliances)
        {
            foreach (var (day, use) in days.Zip(fuel.Use(appliance, from, to, FuelStep.Day, now)))
            {
                if (use.EnergyKilowattHours != 0) yield return new DayFigure(day, appliance.Id, DayFigure.MeasuredEnergy, use.EnergyKilowattHours);
                if (use.EstimatedKilowattHours != 0) yield return new DayFigure(day, appliance.Id, DayFigure.EstimatedEnergy, use.EstimatedKilowattHours);
                if (use.BaseCubicMetres != 0) yield return new DayFigure(day, appliance.Id, DayFigure.Gas, use.BaseCubicMetres);
            }
            if (pots.Find(appliance.Id) is null) continue;
            foreach (var (day, state) in days.Zip(pots.Trace(appliance.Id, [.. days.Select(d => StartOf(d.PlusDays(1)))]))) yield return new DayFigure(day, appliance.Id, DayFigure.Pot, state.MassKilograms);
            foreach (var day in days)
                if (pots.GlassMelted(appliance.Id, StartOf(day), StartOf(day.PlusDays(1))).Value is not 0 and var melted) yield return new DayFigure(day, appliance.Id, DayFigure.Melted, melted);
        }
    }

    Instant StartOf(LocalDate day) => plan.Zone.AtStartOfDay(day).ToInstant();
}
