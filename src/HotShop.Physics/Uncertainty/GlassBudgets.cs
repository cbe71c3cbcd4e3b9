using HotShop.Physics.Energy;
using HotShop.Physics.Pot;

namespace HotShop.Physics.Uncertainty;

/// <summary>Why a mass of glass, or what was got out of the fuel with it, may be off.</summary>
public static class GlassBudgets
{
    /// <summary>How far the heat content of a glass of which only "soda-lime" is known may be off, %; see <see cref="Glass.GlassHeat"/>.</summary>
    public const double HeatContentPercent = 3;

    /// <summary>How far the density of a soda-lime melt may be off, %; see <see cref="GlassMass.SodaLimeMelt"/>.</summary>
    public const double DensityPercent = 1.5;

    /// <summary>A weighed mass, kg.</summary>
    /// <param name="kilograms">As shown.</param>
    /// <param name="stepKilograms">Step of the display, kg.</param>
    /// <param name="limitKilograms">Largest error of the scale, kg; see <see cref="MeterClass.ScaleLimitKilograms"/>.</param>
    /// <param name="scale">Its name; its error is the same each time, the rounding is not.</param>
    public static Budget Weighed(double kilograms, double stepKilograms, double limitKilograms, string scale = "scale") => new(kilograms,
        Contribution.Resolution("display", stepKilograms),
        Contribution.CommonWithin($"class of {scale}", limitKilograms));

    /// <summary>Glass left of a charge once melted, kg.</summary>
    /// <param name="charged">What was charged, kg.</param>
    /// <param name="material">Its yield.</param>
    /// <param name="yieldPercent">How far the yield may be off, % of it.</param>
    public static Budget Charged(Budget charged, ChargeMaterial material, double yieldPercent)
    {
        ArgumentNullException.ThrowIfNull(charged);
        ArgumentNullException.ThrowIfNull(material);
        return charged.Times(new Budget(material.GlassYield, Contribution.CommonWithin($"yield of {material.Name}", yieldPercent, material.GlassYield / 100)));
    }

    /// <summary>Glass in the pot by a dip, kg.</summary>
    /// <param name="pot">The pot and the melt.</param>
    /// <param name="depthMetres">As dipped, above 0 and below the rim by more than the doubt of it, m.</param>
    /// <param name="levelMetres">How far the dip may be off, m.</param>
    /// <param name="geometryPercent">How far the pot's volume may be off, %: wear and drawing.</param>
    /// <param name="densityPercent">How far the density may be off, %.</param>
    public static Budget Dipped(GlassMass pot, double depthMetres, double levelMetres, double geometryPercent, double densityPercent = DensityPercent)
    {
        ArgumentNullException.ThrowIfNull(pot);
        var kilograms = pot.KilogramsAtDepth(depthMetres);
        return new(kilograms,
            Contribution.Rectangular("level", levelMetres, pot.KilogramsPerMetre(depthMetres)),
            Contribution.CommonWithin("pot's volume", geometryPercent, kilograms / 100),
            Contribution.CommonWithin("density", densityPercent, kilograms / 100));
    }

    /// <summary>Heat that a glass takes up, kJ/kg.</summary>
    /// <param name="kilojoulesPerKilogram">As computed.</param>
    /// <param name="percent">How far it may be off, %.</param>
    public static Budget Heat(double kilojoulesPerKilogram, double percent = HeatContentPercent) =>
        new(kilojoulesPerKilogram, Contribution.CommonWithin("heat content", percent, kilojoulesPerKilogram / 100));

    /// <summary>Part of an energy that went into glass, 0 to 1.</summary>
    /// <param name="glass">Glass melted or warmed, kg.</param>
    /// <param name="heat">Taken up by it, kJ/kg.</param>
    /// <param name="energy">Spent, kWh.</param>
    public static Budget Efficiency(Budget glass, Budget heat, Budget energy)
    {
        ArgumentNullException.ThrowIfNull(glass);
        return glass.Times(heat).Times(1 / (1000 * EnergyUnits.MegajoulesPerKilowattHour)).Per(energy);
    }
}
