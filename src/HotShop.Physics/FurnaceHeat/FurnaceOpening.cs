using HotShop.Physics.Radiation;

namespace HotShop.Physics.FurnaceHeat;

/// <summary>A door, a port or the mouth of a glory hole: a hole in a wall, through which the chamber radiates.</summary>
/// <param name="AreaSquareMetres">Clear area, m².</param>
/// <param name="Factor">Share of the radiation that gets out, see <see cref="OpeningFactor"/>.</param>
public sealed record FurnaceOpening(double AreaSquareMetres, double Factor)
{
    public double AreaSquareMetres { get; } = Require.Positive(AreaSquareMetres);

    public double Factor { get; } = Require.Share(Factor);

    /// <summary>A round hole through a wall, m.</summary>
    public static FurnaceOpening Round(double diameterMetres, double wallMetres) =>
        new(Math.PI / 4 * diameterMetres * diameterMetres, OpeningFactor.Round(diameterMetres, wallMetres));

    /// <summary>A rectangular hole through a wall, m.</summary>
    public static FurnaceOpening Rectangular(double widthMetres, double heightMetres, double wallMetres) =>
        new(widthMetres * heightMetres, OpeningFactor.Rectangular(widthMetres, heightMetres, wallMetres));

    /// <summary>Mean power radiated out, kW.</summary>
    /// <param name="insideCelsius">Of the chamber, °C.</param>
    /// <param name="emissivity">0 to 1; a chamber seen through a hole 0.9 to 1.</param>
    /// <param name="surroundingsCelsius">°C.</param>
    /// <param name="shareOfTimeOpen">0 to 1.</param>
    /// <remarks>Hot gas that escapes, and cold air drawn in, come on top.</remarks>
    public double RadiatedKilowatts(double insideCelsius, double emissivity, double surroundingsCelsius, double shareOfTimeOpen = 1) =>
        Require.Share(shareOfTimeOpen) * OpenDoor.RadiatedKilowatts(AreaSquareMetres, insideCelsius, emissivity, Factor, surroundingsCelsius);
}
