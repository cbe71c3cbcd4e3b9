using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Masses of pieces and gathers, and how fast seeds rise.</summary>
static class PieceChecks
{
    const string Geometry = "geometry, computed apart";
    const string Bubble = "Hadamard and Rybczynski's limit of Stokes' law; viscosity of float glass by Seward and Vascott 2005, 2360 kg/m³, computed apart";
    const double Cold = 2500;

    static readonly ViscosityCurve Float = ViscosityCurve.OfPascalSeconds(-2.585, 4215, 263);

    public static IEnumerable<Check> All =>
    [
        .. new[] { (5, "0.16"), (6, "0.28"), (8, "0.67"), (9, "0.95"), (10, "1.31"), (12, "2.26"), (15, "4.42"), (22, "13.9"), (27, "25.8") }
            .Select(b => Check.Printed($"ball of {b.Item1} cm, cold", b.Item2, "kg", Geometry, () => new PieceShape.Ball(b.Item1 / 100.0).Kilograms(Cold), Standing.Computed)),
        Check.Printed("ball of 7.3 cm (a baseball), cold", "0.509", "kg", Geometry, () => new PieceShape.Ball(0.073).Kilograms(Cold), Standing.Computed),
        new("ball of 7.3 cm, off the pot at 2360 kg/m³", "0.481", "kg", 0.0005, Geometry, Standing.Computed, () => new PieceShape.Ball(0.073).Kilograms(2360)),
        Check.Printed("ball of 26.308 kg (58 lb), diameter", "27.19", "cm", Geometry, () => 100 * PieceShape.Ball.OfKilograms(26.308, Cold).DiameterMetres, Standing.Computed),
        Check.Printed("cylinder of 10 cm and 20 cm height", "3.92699", "kg", Geometry, () => new PieceShape.Cylinder(0.10, 0.20).Kilograms(Cold), Standing.Computed),
        Check.Printed("cone of 12 to 4 cm and 10 cm height", "1.36136", "kg", Geometry, () => new PieceShape.Cone(0.12, 0.04, 0.10).Kilograms(Cold), Standing.Computed),
        Check.Printed("paperweight, cap of 6 cm on 8 cm", "0.65973", "kg", Geometry, () => new PieceShape.Dome(0.08, 0.06).Kilograms(Cold), Standing.Computed),
        Check.Printed("paperweight that is a half ball of 10 cm", "0.65450", "kg", Geometry, () => new PieceShape.Dome(0.10, 0.05).Kilograms(Cold), Standing.Computed),
        Check.Printed("blown ball of 20 cm with a wall of 4 mm", "1.20704", "kg", Geometry, () => new PieceShape.BlownBall(0.20, 0.004).Kilograms(Cold), Standing.Computed),
        Check.Printed("bowl of 20 cm with a wall of 4 mm", "0.60352", "kg", Geometry, () => new PieceShape.Bowl(0.20, 0.004).Kilograms(Cold), Standing.Computed),
        Check.Printed("tumbler of 8 cm, 12 cm high, wall 4 mm, bottom 8 mm", "0.36794", "kg", Geometry, () => new PieceShape.Tumbler(0.08, 0.12, 0.004, 0.008).Kilograms(Cold), Standing.Computed),
        .. new[] { (1150, 0.2, "1.891"), (1150, 1.0, "47.269"), (1200, 0.2, "3.390"), (1200, 1.0, "84.753"), (1300, 0.2, "9.205"), (1300, 1.0, "230.115") }
            .Select(b => Check.Printed(FormattableString.Invariant($"bubble of {b.Item2} mm in float glass at {b.Item1} °C"), b.Item3, "mm/h", Bubble, () => 3.6e6 * BubbleRise.MetresPerSecond(b.Item2 / 1000, Float.PascalSeconds(b.Item1), 2360), Standing.Computed)),
        Check.Printed("stiff bubble of 1 mm in float glass at 1150 °C", "31.513", "mm/h", "Stokes' law, otherwise as the moving surface", () => 3.6e6 * BubbleRise.StiffMetresPerSecond(0.001, Float.PascalSeconds(1150), 2360), Standing.Computed),
        Check.Printed("bubble of 1 mm rises 30 cm in float glass at 1150 °C", "6.35", "h", Bubble, () => BubbleRise.TimeToRise(0.30, 0.001, Float.PascalSeconds(1150), 2360).TotalHours, Standing.Computed),
    ];
}
