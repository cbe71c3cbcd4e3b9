using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel.Spreading;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>
/// The whole studio's use, nothing counted twice: the main meter is the sum, what sensors leave of it is spread over the fires without one by nameplate,
/// mode and on-time, or is the shop's. Readings that people type count as the main meter does; between two of them the energy is spread in the same way.
/// </summary>
public sealed class StudioFuel(StudioPlan plan, FuelBook fuel, IReadingHistory history, LogbookBook logbook, ModeHistory modes, MeterLog readings)
{
    readonly MeterTree tree = new(plan);

    /// <summary>The studio's meters, each at its place.</summary>
    public MeterTree Meters => tree;

    /// <summary>Use in [from, to) by hour, day or month of the studio's zone; stretches at the ends are cut to the question. Days make the month exactly; hours
    /// make the day in total, and their parts up to how the fires wander within it.</summary>
    /// <param name="now">Time not yet passed is not missing.</param>
    public IReadOnlyList<StudioUse> Use(Instant from, Instant to, FuelStep step, Instant now)
    {
        var edges = Calendar.Edges(from, Instant.Min(to, Instant.Max(from, now)), step, plan.Zone);
        if (edges.Count < 2) return [];
        // One month at a time, with the readings around it: a day's figure does not depend on what else was asked.
        return [.. edges.Zip(edges.Skip(1)).GroupBy(s => s.First.InZone(plan.Zone).Date is var day ? (day.Year, day.Month) : default).SelectMany(month => Month([.. month], now))];
    }

    /// <summary>The same over one stretch, which may reach over months.</summary>
    public StudioUse Between(Instant from, Instant to, Instant now) => StudioUse.Sum(Use(from, to, FuelStep.Month, now));

    /// <summary>Whether sensors or switched nameplates of its own speak for an appliance, so that no main meter needs to be asked.</summary>
    public bool HasOwnSource(AppliancePlan appliance) => FuelSource.Of(appliance).Count > 0;

    IEnumerable<StudioUse> Month(List<(Instant From, Instant To)> steps, Instant now)
    {
        List<Instant> edges = [steps[0].From, .. steps.Select(s => s.To)];
        var source = new SpreadSource(plan, tree, fuel, history, logbook, modes, readings);
        var (gas, electricity) = (new KindMonth(EnergyKind.Gas, plan, tree, fuel, source, edges, now), new KindMonth(EnergyKind.Electricity, plan, tree, fuel, source, edges, now));
        return steps.Select(s => Together(s.From, s.To, gas.Step(s.From, s.To), electricity.Step(s.From, s.To)));
    }

    static StudioUse Together(Instant from, Instant to, KindUse gas, KindUse electricity) => new(
        from, to, [.. gas.Shares, .. electricity.Shares], gas.Total, electricity.Total,
        new[] { gas.Coverage, electricity.Coverage }.OfType<double>().DefaultIfEmpty(0).Average(), gas.Resets + electricity.Resets)
    {
        GasBudget = gas.Budget, ElectricityBudget = electricity.Budget,
        Metered = gas.Metered + electricity.Metered, GasMeasuredShare = gas.Coverage,
    };
}
