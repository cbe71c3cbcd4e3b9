using HotShop.Physics.FurnaceHeat;

namespace HotShop.Checks.Furnace;

static class WallChecks
{
    const double Foot = 0.3048, BtuPerHour = 1055.05585262 / 3600, BtuPerHourSquareFoot = BtuPerHour / (Foot * Foot), BtuPerHourFootFahrenheit = BtuPerHour / Foot * 1.8;

    const string Kern = "Kern, Process Heat Transfer (1950), example 2.2", KernGap = "Kern, Process Heat Transfer (1950), example 2.3";
    const string Incropera = "Incropera and others, Fundamentals of Heat and Mass Transfer, example 1.1";
    const string Geankoplis = "Geankoplis, Transport Processes and Separation Process Principles, example 4.1-1";
    const string Suite = "Oak Ridge National Laboratory, published process-heating calculations, unit test of wall losses (2024)";
    const string Table = "Oak Ridge National Laboratory's documented formula (process heating, v1.0.11) with its table of surfaces, evaluated by other code";
    const string Series = "series of resistances, evaluated by other code";

    static readonly FurnaceWall Oven = new(Kerns(8, 0.68), Kerns(4, 0.15), Kerns(6, 0.40));
    static readonly FurnaceWall OvenWithGap = new(Kerns(8, 0.68), Kerns(0.25, 0.0265), Kerns(4, 0.15), Kerns(6, 0.40));
    static readonly FurnaceWall Brick = new(WallLayer.Constant(0.15, 1.7));
    static readonly FurnaceWall Cork = new(WallLayer.Constant(0.0254, 0.048));
    static readonly FurnaceWall PotFurnace = new(WallLayer.Constant(0.115, 0.35), WallLayer.Constant(0.100, 0.20));
    static readonly FurnaceWall Clay = new(WallLayer.Between(0.1, 100, 1.1, 1000, 1.5));
    static readonly FurnaceWall ClayAndRedBrick = new(WallLayer.Between(0.090, 0, 0.3, 1000, 0.6), WallLayer.Constant(0.450, 0.8));

    public static IEnumerable<Check> All => [.. Conduction, .. Rooms, .. Skins];

    static IEnumerable<Check> Conduction =>
    [
        // Computed by slide rule there: resistances rounded to three digits.
        new("heat through firebrick, insulating brick and building brick, 1600 °F to 125 °F", "332", "Btu/(h ft²)", 1, Kern, Standing.Read, () => Between(Oven, 1600, 125).WattsPerSquareMetre / BtuPerHourSquareFoot),
        new("the same wall: between firebrick and insulating brick", "1275", "°F", 1, Kern, Standing.Read, () => Fahrenheit(Between(Oven, 1600, 125).FaceCelsius[1])),
        new("the same wall: between insulating brick and building brick", "537", "°F", 3, Kern, Standing.Read, () => Fahrenheit(Between(Oven, 1600, 125).FaceCelsius[2])),
        new("the same wall with a quarter inch of still air in it", "281", "Btu/(h ft²)", 1, KernGap, Standing.Read, () => Between(OvenWithGap, 1600, 125).WattsPerSquareMetre / BtuPerHourSquareFoot),
        Check.Printed("heat through 0.15 m of fireclay brick, 1400 K to 1150 K", "2833", "W/m²", Incropera, () => Brick.Between(1400 - 273.15, 1150 - 273.15).WattsPerSquareMetre, Standing.Memory),
        Check.Printed("the same through a wall of 0.5 m by 1.2 m", "1700", "W", Incropera, () => 0.5 * 1.2 * Brick.Between(1400 - 273.15, 1150 - 273.15).WattsPerSquareMetre, Standing.Memory),
        Check.Printed("heat through an inch of fibre board of 0.048 W/(m K), 352.7 K to 297.1 K", "105.1", "W/m²", Geankoplis, () => Cork.Between(352.7 - 273.15, 297.1 - 273.15).WattsPerSquareMetre),
        Check.Printed("heat through 0.1 m of clay whose conductivity goes from 1.1 at 100 °C to 1.5 at 1000 °C", "11700", "W/m²", "mean conductivity is exact where it goes straight with temperature: 1.3 × 900 / 0.1", () => Clay.Between(1000, 100).WattsPerSquareMetre, Standing.Computed),
        Check.Printed("heat through 90 mm of clay of 0.3 (1 + 0.001 t) and 450 mm of brick of 0.8 W/(m K), 1100 °C to 30 °C", "1499.7", "W/m²", "quadratic of the interface, evaluated by other code", () => ClayAndRedBrick.Between(1100, 30).WattsPerSquareMetre, Standing.Computed),
        Check.Printed("the same wall: between clay and brick", "873.55", "°C", "quadratic of the interface, evaluated by other code", () => ClayAndRedBrick.Between(1100, 30).FaceCelsius[1], Standing.Computed),
    ];

    static IEnumerable<Check> Rooms =>
    [
        Check.Printed("heat through 115 mm of 0.35 and 100 mm of 0.20 W/(m K), 1150 °C to a room of 25 °C, film 12 W/(m² K)", "1233.7", "W/m²", Series, () => InRoom(new ShellSurface.Film(12)).WattsPerSquareMetre, Standing.Computed),
        Check.Printed("skin of that wall", "127.8", "°C", Series, () => InRoom(new ShellSurface.Film(12)).ShellCelsius, Standing.Computed),
        Check.Printed("the same wall, skin of emissivity 0.9 in a still room, convection and radiation apart", "1254.4", "W/m²", "Oak Ridge National Laboratory's convection and Stefan-Boltzmann with the series of resistances, evaluated by other code", () => InRoom(new ShellSurface.Bare(0.9)).WattsPerSquareMetre, Standing.Computed),
        Check.Printed("skin of that wall then", "110.61", "°C", "Oak Ridge National Laboratory's convection and Stefan-Boltzmann with the series of resistances, evaluated by other code", () => InRoom(new ShellSurface.Bare(0.9)).ShellCelsius, Standing.Computed),
        Check.Printed("holding heat of a furnace with 6 m² of that wall and a round port of 10 cm through it, open a tenth of the time", "7.4569", "kW", Series, () => HoldingHeat.Kilowatts(
            [new WallPart(PotFurnace, 6, new ShellSurface.Film(12))], [new OpenPart(FurnaceOpening.Round(0.10, 0.215), 0.1)], 1150, 25), Standing.Computed),
        Check.Printed("gas that holds it with 35 % of the heat available", "21.31", "kW", Series, () => HoldingHeat.FuelKilowatts(7.4569, 0.35), Standing.Computed),
    ];

    static WallHeat InRoom(ShellSurface skin) => PotFurnace.InRoom(1150, 25, skin);

    static IEnumerable<Check> Skins =>
    [
        // Their radiation takes 460 °F and 0.1713e-8: 0.05 % of the whole.
        new("500 ft² of upright wall, 225 °F in air of 80 °F, wind 10 mph, emissivity 0.9", "404627.55", "Btu/h", 404627.55 * 0.0006, Suite, Standing.Read,
            () => 500 * new ShellSurface.Bare(0.9, ShellFacing.Sideways, 10 * 0.44704).WattsPerSquareMetre(C(225), C(80)) / BtuPerHourSquareFoot),
        new("of it by convection: the whole less 0.9 × 0.1713e-8 × (685⁴ − 540⁴) × 500", "300453.69", "Btu/h", 0.5, Suite, Standing.Computed,
            () => 500 * Convection(ShellFacing.Sideways, 10, 225, 80)),
        Check.Printed("convection of an upright wall at 225 °F in still air of 80 °F", "161.935", "Btu/(h ft²)", Table, () => Convection(ShellFacing.Sideways, 0, 225, 80), Standing.Computed),
        Check.Printed("convection of a roof at 225 °F in still air of 80 °F", "207.937", "Btu/(h ft²)", Table, () => Convection(ShellFacing.Up, 0, 225, 80), Standing.Computed),
        Check.Printed("convection of a floor from below at 225 °F in still air of 80 °F", "103.387", "Btu/(h ft²)", Table, () => Convection(ShellFacing.Down, 0, 225, 80), Standing.Computed),
        Check.Printed("convection of an upright wall at 350 °F in air of 60 °F, wind 2 mph", "695.90", "Btu/(h ft²)", Table, () => Convection(ShellFacing.Sideways, 2, 350, 60), Standing.Computed),
    ];

    static double Convection(ShellFacing facing, double milesAnHour, double skinFahrenheit, double airFahrenheit) =>
        new ShellSurface.Bare(0.9, facing, milesAnHour * 0.44704).ConvectionWattsPerSquareMetre(C(skinFahrenheit), C(airFahrenheit)) / BtuPerHourSquareFoot;

    static WallLayer Kerns(double inches, double btuPerHourFootFahrenheit) => WallLayer.Constant(inches * 0.0254, btuPerHourFootFahrenheit * BtuPerHourFootFahrenheit);

    static WallHeat Between(FurnaceWall wall, double hotFahrenheit, double shellFahrenheit) => wall.Between(C(hotFahrenheit), C(shellFahrenheit));

    static double C(double fahrenheit) => OpeningChecks.Celsius(fahrenheit);

    static double Fahrenheit(double celsius) => celsius * 1.8 + 32;
}
