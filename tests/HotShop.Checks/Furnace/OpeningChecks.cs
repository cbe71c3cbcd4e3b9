using System.Globalization;
using HotShop.Physics.FurnaceHeat;
using HotShop.Physics.Radiation;

namespace HotShop.Checks.Furnace;

static class OpeningChecks
{
    const double Inch = 0.0254, BtuPerHour = 1055.05585262 / 3600;

    const string Suite = "Oak Ridge National Laboratory, published process-heating calculations, unit tests of opening losses (2024)";
    const string Fits = "polynomials printed in Oak Ridge National Laboratory's documentation of process-heating calculations (v1.0.11), evaluated by other code";
    const string Law = "Stefan-Boltzmann law with the constant of CODATA 2018";

    public static IEnumerable<Check> All => [.. BlackOpenings, .. Ratios, .. GloryHoles, .. WholeLosses, .. RoundHoles, .. Rectangles, .. Disks];

    static IEnumerable<Check> BlackOpenings =>
        from row in new[] { (1000, "148.6"), (1050, "173.4"), (1100, "201.2"), (1150, "232.2"), (1200, "266.6"), (1250, "304.8"), (1300, "346.9") }
        select Check.Printed($"radiation of a square metre of black opening at {row.Item1} °C to a room of 20 °C", row.Item2, "kW", Law,
            () => OpenDoor.RadiatedKilowatts(1, row.Item1, emissivity: 1, viewFactor: 1, surroundingsCelsius: 20), Standing.Computed);

    static IEnumerable<Check> Ratios =>
        from row in new[] { (900, "2.1", 0.05), (1100, "3.96", 0.005), (1300, "6.83", 0.005) }
        select new Check($"black radiation at {row.Item1} °C over that at 700 °C", row.Item2, "", row.Item3, "Asian Productivity Organization, training manual on furnaces, table 4-1", Standing.Read,
            () => OpenDoor.RadiatedKilowatts(1, row.Item1, 1, 1, -273.15) / OpenDoor.RadiatedKilowatts(1, 700, 1, 1, -273.15));

    static IEnumerable<Check> GloryHoles =>
        from row in new (int Celsius, int Inches, string Kilowatts)[]
        {
            (1100, 8, "5.9"), (1100, 12, "13.2"), (1100, 16, "23.5"), (1100, 20, "36.7"), (1100, 24, "52.8"),
            (1200, 8, "7.8"), (1200, 12, "17.5"), (1200, 16, "31.1"), (1200, 20, "48.6"), (1200, 24, "70.0"),
            (1260, 8, "9.1"), (1260, 12, "20.5"), (1260, 16, "36.5"), (1260, 20, "57.1"), (1260, 24, "82.2"),
        }
        select Check.Printed($"glory hole of {row.Inches} in at {row.Celsius} °C, doors open, emissivity 0.9, thin front", row.Kilowatts, "kW", Law,
            () => FurnaceOpening.Round(row.Inches * Inch, wallMetres: 0).RadiatedKilowatts(row.Celsius, emissivity: 0.9, surroundingsCelsius: 20), Standing.Computed);

    // They take 460 °F as the offset of the absolute scale and 0.1713e-8 as the constant: worth 0.2 % together.
    static IEnumerable<Check> WholeLosses =>
    [
        new("radiation through a round opening of 12 in, emissivity 0.95, factor 0.70, 1600 °F to 75 °F", "16038.27", "Btu/h", 16038 * 0.0015, Suite, Standing.Read,
            () => new FurnaceOpening(Math.PI * 36 * Inch * Inch, 0.70).RadiatedKilowatts(Celsius(1600), 0.95, Celsius(75)) * 1000 / BtuPerHour),
        new("radiation through a door of 48 by 15 in, emissivity 0.95, factor 0.64, open a fifth of the time, 1600 °F to 75 °F", "18670.23", "Btu/h", 18670 * 0.0015, Suite, Standing.Read,
            () => new FurnaceOpening(48 * 15 * Inch * Inch, 0.64).RadiatedKilowatts(Celsius(1600), 0.95, Celsius(75), shareOfTimeOpen: 0.2) * 1000 / BtuPerHour),
    ];

    static IEnumerable<Check> RoundHoles =>
    [
        .. from row in new (double Inches, double Wall, string Factor)[]
           {
               (5, 3, "0.624519890259"), (5, 1, "0.83499999996"), (5, 5 / 6.0, "0.86"), (5, 10, "0.35084375"), (5, 50, "0.098254464286"), (9, 50, "0.160395178571"), (19, 50, "0.289271964286"),
           }
           select new Check(Text($"factor of a round hole of {row.Inches} in through a wall of {row.Wall:0.##} in"), row.Factor, "", 1e-8, Suite, Standing.Read,
               () => OpeningFactor.Round(row.Inches * Inch, row.Wall * Inch)),
        .. from row in new (double Ratio, string Factor)[] { (0.2, "0.174929"), (0.9, "0.494147"), (1, "0.520000"), (2, "0.665000"), (3, "0.750000"), (4.5, "0.818594") }
           select Check.Printed(Text($"factor of a round hole {row.Ratio} walls wide"), row.Factor, "", Fits, () => OpeningFactor.Round(row.Ratio, 1), Standing.Computed),
        new("factor of a round hole a twentieth of its wall wide: half of that of a tenth", "0.049127", "", 1e-6, Suite, Standing.Computed, () => OpeningFactor.Round(0.05, 1)),
        new("factor of a round hole twelve walls wide: half as much kept back as by one of six", "0.93", "", 1e-6, Suite, Standing.Computed, () => OpeningFactor.Round(12, 1)),
    ];

    static IEnumerable<Check> Rectangles =>
    [
        .. from row in new (double Wall, double Length, double Height, string Factor)[]
           {
               (5, 5, 10, "0.60"), (5, 10, 5, "0.60"), (1, 10, 5, "0.88"), (2, 10, 5, "0.786933593749"), (27, 50, 55, "0.678646418065"), (0.5, 3, 4, "0.876666666245"), (14.05, 3, 3, "0.2044991347"),
           }
           select new Check(Text($"factor of a door of {row.Length} by {row.Height} in through a wall of {row.Wall} in"), row.Factor, "", 1e-7, Suite, Standing.Read,
               () => OpeningFactor.Rectangular(row.Length * Inch, row.Height * Inch, row.Wall * Inch)),
        .. from row in new (string Name, double Long, double Ratio, string Factor)[]
           {
               ("square", 1, 0.5, "0.370937"), ("square", 1, 0.9, "0.512187"), ("square", 1, 1, "0.535000"), ("square", 1, 3, "0.770000"), ("square", 1, 4.5, "0.831270"),
               ("two to one", 2, 0.2, "0.225214"), ("two to one", 2, 0.5, "0.432469"), ("two to one", 2, 0.9, "0.580058"), ("two to one", 2, 4.5, "0.864824"),
               ("ten to one", 10, 0.2, "0.340000"), ("ten to one", 10, 0.5, "0.537813"), ("ten to one", 10, 0.9, "0.661563"),
               ("ten to one", 10, 1, "0.680000"), ("ten to one", 10, 2, "0.815000"), ("ten to one", 10, 4.5, "0.903809"), ("ten to one", 10, 6, "0.925000"),
           }
           select new Check(Text($"factor of a door {row.Name}, its shorter side {row.Ratio} walls wide"), row.Factor, "", 1e-6, Fits, Standing.Computed,
               () => OpeningFactor.Rectangular(row.Ratio, row.Long * row.Ratio, 1)),
        new("factor of a door six to one, two walls wide: half way between two and ten to one", "0.78", "", 1e-6, Fits, Standing.Computed, () => OpeningFactor.Rectangular(2, 12, 1)),
    ];

    static IEnumerable<Check> Disks =>
    [
        Check.Printed("view factor of a disk of 0.1 m to one of 0.2 m radius, 0.5 m away", "0.1339", "", "Engineering Equation Solver, heat transfer library, disk to disk, after Siegel and Howell, 4th ed., p. 845", () => DiskPair.ViewFactor(0.1, 0.2, 0.5)),
        Check.Printed("view factor of a disk of 0.5 m to one of 1 m radius, 2 m away", "0.1922", "", "Engineering Equation Solver, heat transfer library, ring to disk, after Howell's catalogue B-22", () => DiskPair.ViewFactor(0.5, 1, 2)),
        Check.Printed("bound of the factor of a round hole of 5 through a wall of 3", "0.660286", "", "coaxial disks, (1 + F12)/2, evaluated by other code", () => DiskPair.HoleBound(5, 3), Standing.Computed),
        Check.Printed("bound of the factor of a round hole six walls wide", "0.858812", "", "coaxial disks, (1 + F12)/2, evaluated by other code", () => DiskPair.HoleBound(6, 1), Standing.Computed),
        new("likely error of a factor: the fit of a round hole 5/3 walls wide lies so far below the bound", "0.04", "", 0.005, Suite, Standing.Computed, () => DiskPair.HoleBound(5, 3) - OpeningFactor.Round(5, 3)),
    ];

    internal static double Celsius(double fahrenheit) => (fahrenheit - 32) / 1.8;

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
