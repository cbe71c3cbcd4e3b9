using HotShop.Physics.Energy;
using HotShop.Physics.Glass;
using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;

namespace HotShop.Monitor.Pot;

/// <summary>What the glass of some charges took up by itself, whatever the fire burnt for it: the least that melting them can take. Pure.</summary>
/// <param name="KilowattHoursPerKilogram">From the cold charge to the glass as it is worked, with the reactions of what was batch.</param>
/// <param name="Celsius">To which it is reckoned.</param>
sealed record MeltedHeat(Budget KilowattHoursPerKilogram, double Celsius)
{
    /// <summary>Cold cullet and batch lie about in the shop. Common practice.</summary>
    const double ChargedCelsius = 20;

    const double KilojoulesPerKilowattHour = 1000 * EnergyUnits.MegajoulesPerKilowattHour;

    /// <returns>Null where nothing was charged, or of this glass no heat content is known.</returns>
    public static MeltedHeat? Of(PotPlan pot, IReadOnlyList<LoggedCharge> charges)
    {
        var kilograms = charges.Sum(c => c.GlassKilograms);
        if (kilograms <= 0 || !GlassHeat.Knows(pot.Profile.Composition)) return null;
        var celsius = (pot.Options.Glass ?? new()).DippedCelsius;
        var batch = charges.Where(c => c.IsBatch).Sum(c => c.GlassKilograms) / kilograms;
        var heat = GlassBudgets.Heat(pot.Profile.MeltingKilojoulesPerKilogram(ChargedCelsius, celsius, batch));
        return new(heat.Times(1 / KilojoulesPerKilowattHour), celsius);
    }

    /// <summary>Of several pots' glass together, by their kilograms.</summary>
    public static MeltedHeat Mean(IReadOnlyList<(MeltedHeat Heat, double Kilograms)> pots)
    {
        var kilograms = pots.Sum(p => p.Kilograms);
        return new(Budget.Of(pots.Sum(p => p.Heat.KilowattHoursPerKilogram.Value * p.Kilograms) / kilograms, pots.Select(p => (p.Heat.KilowattHoursPerKilogram, p.Kilograms / kilograms))),
            pots.Sum(p => p.Heat.Celsius * p.Kilograms) / kilograms);
    }

    /// <summary>Share of what was burnt that ended in the glass.</summary>
    /// <param name="glassKilograms">Melted.</param>
    /// <param name="burntKilowattHours">Gross; above 0.</param>
    public Budget ShareOf(Estimate glassKilograms, Estimate burntKilowattHours) => GlassBudgets.Efficiency(
        new Budget(glassKilograms.Value, new Contribution("glass melted", glassKilograms.StandardUncertainty)),
        KilowattHoursPerKilogram.Times(KilojoulesPerKilowattHour),
        new Budget(burntKilowattHours.Value, new Contribution("fuel burnt", burntKilowattHours.StandardUncertainty)));
}

/// <summary>Melting efficiency of some days.</summary>
/// <param name="GlassKwhPerKg">Heat that the glass itself took up, from the cold charge to <paramref name="GlassCelsius"/>.</param>
/// <param name="MeltingEfficiency">That heat over all energy burnt, 0 to 1.</param>
public sealed record EfficiencyAnswer(
    double GlassKwhPerKg, double GlassKwhPerKgLow95, double GlassKwhPerKgHigh95, double GlassCelsius, double MeltingEfficiency, double MeltingEfficiencyLow95, double MeltingEfficiencyHigh95)
{
    internal static EfficiencyAnswer? Of(MeltedHeat? heat, Estimate glassKilograms, Estimate burntKilowattHours)
    {
        if (heat is null || burntKilowattHours.Value <= 0) return null;
        var (own, share) = (heat.KilowattHoursPerKilogram, heat.ShareOf(glassKilograms, burntKilowattHours));
        return new(own.Value, own.Low95, own.High95, heat.Celsius, share.Value, Math.Max(0, share.Low95), share.High95);
    }
}
