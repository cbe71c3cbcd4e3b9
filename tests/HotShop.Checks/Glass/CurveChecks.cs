using HotShop.Physics.Glass;

namespace HotShop.Checks.Glass;

/// <summary>Viscosity over temperature: published curves at their fixed points, and the curve through three points.</summary>
static class CurveChecks
{
    const string SewardVascott = "Seward and Vascott 2005, high-temperature glass melt database, constants as reprinted in open encyclopaedias";
    const string Isokoms = "Fluegel, Glass Technol. 48 (2007) 13, tables 2 and 12, measured column; constants of the standard's certificate from memory";

    static readonly ViscosityCurve Container = ViscosityCurve.OfPascalSeconds(-2.309, 3922, 291), Float = ViscosityCurve.OfPascalSeconds(-2.585, 4215, 263);
    static readonly ViscosityCurve Srm710 = new(-1.626, 4239, 265.7), Srm711 = new(-1.621, 4254.6, 152.1);
    static readonly ViscosityCurve Fitted = ViscosityCurve.Through(new(2.5, 1293), new(7.6, 725), new(13, 556));

    public static IEnumerable<Check> All =>
    [
        .. Named("container glass", Container, "1029.7", "731.2", "565.1"),
        .. Named("float glass", Float, "1017.7", "721.9", "552.0"),
        .. Named("borosilicate 3.3", GlassProfile.Borosilicate33.Viscosity, "1251.0", "814.8", "557.5"),
        new("borosilicate 3.3, working point", "1260", "Cel", 10, "data sheets to ISO 3585; another melt, rounded to 10 °C", Standing.Read, () => GlassProfile.Borosilicate33.WorkingPointCelsius),
        new("borosilicate 3.3, softening point", "825", "Cel", 11, "data sheets to ISO 3585; another melt", Standing.Read, () => GlassProfile.Borosilicate33.SofteningPointCelsius),
        new("borosilicate 3.3, annealing point", "560", "Cel", 3, "data sheets to ISO 3585; another melt", Standing.Read, () => GlassProfile.Borosilicate33.AnnealingPointCelsius),
        new("borosilicate 3.3, strain point", "516", "Cel", 0.5, "Seward and Vascott 2005, computed from the constants apart", Standing.Computed, () => GlassProfile.Borosilicate33.StrainPointCelsius),
        Check.Printed("borosilicate 3.3, melting point", "1847", "Cel", "Seward and Vascott 2005, computed from the constants apart", () => GlassProfile.Borosilicate33.MeltingPointCelsius, Standing.Computed),
        .. Standard("standard glass 710", Srm710, "1434", "1293", "725", "556"),
        .. Standard("standard glass 711", Srm711, "1327", "1185", "614", "443"),
        new("curve through (2.5, 1293 °C), (7.6, 725 °C), (13, 556 °C): A", "-1.604", "1", 0.0005, "closed form, computed apart", Standing.Computed, () => Fitted.A),
        new("curve through (2.5, 1293 °C), (7.6, 725 °C), (13, 556 °C): B", "4206.5", "K", 0.05, "closed form, computed apart", Standing.Computed, () => Fitted.BKelvin),
        new("curve through (2.5, 1293 °C), (7.6, 725 °C), (13, 556 °C): T0", "267.96", "Cel", 0.005, "closed form, computed apart", Standing.Computed, () => Fitted.T0Celsius),
        new("curve through (2.5, 1293 °C), (7.6, 725 °C), (13, 556 °C): working point", "1018.6", "Cel", 0.05, "closed form, computed apart", Standing.Computed, () => Fitted.CelsiusAt(FixedPoints.Working)),
        Check.Printed("float glass at 1150 °C", "146.9", "Pa.s", SewardVascott, () => Float.PascalSeconds(1150), Standing.Computed),
        Check.Printed("float glass at 1200 °C", "81.9", "Pa.s", SewardVascott, () => Float.PascalSeconds(1200), Standing.Computed),
        Check.Printed("float glass at 1300 °C", "30.2", "Pa.s", SewardVascott, () => Float.PascalSeconds(1300), Standing.Computed),
        .. Beside("window soda-lime by its composition, beside measured float glass", GlassProfile.WindowSodaLime),
    ];

    static IEnumerable<Check> Named(string glass, ViscosityCurve curve, string working, string softening, string annealing) =>
    [
        Check.Printed($"{glass}, log 4 dPa·s", working, "Cel", SewardVascott, () => curve.CelsiusAt(FixedPoints.Working), Standing.Computed),
        Check.Printed($"{glass}, log 7.6 dPa·s", softening, "Cel", SewardVascott, () => curve.CelsiusAt(FixedPoints.Softening), Standing.Computed),
        Check.Printed($"{glass}, log 13 dPa·s", annealing, "Cel", SewardVascott, () => curve.CelsiusAt(FixedPoints.Annealing), Standing.Computed),
    ];

    static IEnumerable<Check> Standard(string glass, ViscosityCurve curve, string log2, string log25, string log76, string log13) =>
    [
        new($"{glass}, log 2 dPa·s", log2, "Cel", 1, Isokoms, Standing.Read, () => curve.CelsiusAt(2)),
        new($"{glass}, log 2.5 dPa·s", log25, "Cel", 1, Isokoms, Standing.Read, () => curve.CelsiusAt(2.5)),
        new($"{glass}, log 7.6 dPa·s", log76, "Cel", 1, Isokoms, Standing.Read, () => curve.CelsiusAt(7.6)),
        new($"{glass}, log 13 dPa·s", log13, "Cel", 1, Isokoms, Standing.Read, () => curve.CelsiusAt(13)),
    ];

    /// <summary>Two ways to a glass of nearly the same composition, within the model's standard error.</summary>
    static IEnumerable<Check> Beside(string what, GlassProfile profile)
    {
        foreach (var (name, log, published) in new[] { ("working point", FixedPoints.Working, "1018"), ("softening point", FixedPoints.Softening, "722"), ("annealing point", FixedPoints.Annealing, "552") })
            yield return new($"{what}: {name}", published, "Cel", 9, SewardVascott, Standing.Read, () => profile.Viscosity.CelsiusAt(log));
    }
}
