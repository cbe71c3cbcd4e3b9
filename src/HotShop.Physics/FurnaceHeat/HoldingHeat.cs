namespace HotShop.Physics.FurnaceHeat;

/// <summary>A part of a furnace's outside.</summary>
/// <param name="AreaSquareMetres">m², at the middle of the wall's thickness where its two faces differ. Common practice.</param>
public sealed record WallPart(FurnaceWall Wall, double AreaSquareMetres, ShellSurface Skin)
{
    public double AreaSquareMetres { get; } = Require.Positive(AreaSquareMetres);
}

/// <summary>A hole in it.</summary>
/// <param name="ShareOfTimeOpen">0 to 1.</param>
public sealed record OpenPart(FurnaceOpening Opening, double ShareOfTimeOpen, double Emissivity = 0.9)
{
    public double ShareOfTimeOpen { get; } = Require.Share(ShareOfTimeOpen);

    public double Emissivity { get; } = Require.Share(Emissivity);
}

/// <summary>What it takes to hold a furnace at a temperature, from its walls and openings. At rest: nothing charged, nothing warming up.</summary>
public static class HoldingHeat
{
    /// <summary>Heat that leaves by walls and openings, kW.</summary>
    /// <param name="insideCelsius">°C.</param>
    /// <param name="airCelsius">Of the room, °C.</param>
    public static double Kilowatts(IEnumerable<WallPart> walls, IEnumerable<OpenPart> openings, double insideCelsius, double airCelsius)
    {
        ArgumentNullException.ThrowIfNull(walls);
        ArgumentNullException.ThrowIfNull(openings);
        return walls.Sum(w => w.AreaSquareMetres * w.Wall.InRoom(insideCelsius, airCelsius, w.Skin).WattsPerSquareMetre) / 1000
            + openings.Sum(o => o.Opening.RadiatedKilowatts(insideCelsius, o.Emissivity, airCelsius, o.ShareOfTimeOpen));
    }

    /// <summary>Fuel that has to burn to leave so much heat in the chamber, kW.</summary>
    /// <param name="kilowatts">Heat wanted, kW.</param>
    /// <param name="availableHeat">Share of the fuel's heat that the flue does not carry off, above 0 and at most 1; of gross heat for gross kW.</param>
    public static double FuelKilowatts(double kilowatts, double availableHeat) => Require.NotNegative(kilowatts) / Require.Positive(Require.Share(availableHeat));
}
