namespace HotShop.Physics.Glass;

/// <summary>Density of a melt of the oxides of silicon, aluminium, magnesium, calcium, sodium and potassium, from the volume that a
/// mole of each takes up. ± 1.5 % for a soda-lime glass at pot temperatures, which lie below the measured 1300 °C.</summary>
public static class MeltVolume
{
    /// <summary>Weight % of other oxides that may be left out: they shift the density by less than 0.5 %.</summary>
    const double MostOtherWeightPercent = 1;

    const double KilogramsPerCubicMetreOfGramsPerCubicCentimetre = 1000;

    static readonly Lazy<MeltVolumeTable> Table = new(() => EmbeddedJson.Read<MeltVolumeTable>("Glass.melt-volumes.json"));

    /// <summary>Whether nearly all of the glass is of the oxides whose volumes are known.</summary>
    public static bool Knows(GlassComposition glass) => glass.WeightPercentBeside(Table.Value.CubicCentimetresPerMole.Keys) <= MostOtherWeightPercent;

    /// <summary>Density of the melt, kg/m³.</summary>
    /// <param name="glass">One that <see cref="Knows"/> says yes to.</param>
    /// <param name="celsius">A temperature at which it flows.</param>
    public static double KilogramsPerCubicMetre(GlassComposition glass, double celsius)
    {
        ArgumentNullException.ThrowIfNull(glass);
        if (!Knows(glass)) throw new ArgumentException("more than 1 % of the glass are oxides whose volume in a melt is not known", nameof(glass));
        var (table, known) = (Table.Value, glass.Only(Table.Value.CubicCentimetresPerMole.Keys));
        var warmer = PhysicalConstants.Kelvin(Require.Celsius(celsius)) - table.ReferenceKelvin;
        var percents = known.MolePercent.Values.Sum();
        var volume = known.MolePercent.Sum(m => m.Value * (table.CubicCentimetresPerMole[m.Key] + warmer * table.CubicCentimetresPerMoleKelvin.GetValueOrDefault(m.Key))) / percents;
        return KilogramsPerCubicMetreOfGramsPerCubicCentimetre * known.GramsPerMole / volume;
    }
}

/// <summary>The stored volumes; silica's does not grow with temperature.</summary>
internal sealed record MeltVolumeTable(
    string Source, string Licence, double ReferenceKelvin, Dictionary<Oxide, double> CubicCentimetresPerMole, Dictionary<Oxide, double> CubicCentimetresPerMoleKelvin);
