using HotShop.Physics.Combustion;

namespace HotShop.Checks.Combustion;

/// <summary>Heat held by hot gases, and heats of formation.</summary>
static class EnthalpyChecks
{
    const string Nasa = "NASA/TP-2002-211556, its polynomials evaluated apart", Janaf = "NIST-JANAF tables (Chase 1998), from memory; older data for water", Formation = "NASA/TP-2002-211556, heats of formation";

    static readonly (string Name, Nasa9 Gas, string[] At)[] table =
    [
        ("carbon dioxide", Nasa9.CarbonDioxide, ["8.307", "33.400", "61.709", "91.437", "121.905"]),
        ("water vapour", Nasa9.WaterVapour, ["6.925", "26.003", "48.206", "73.043", "99.725"]),
        ("nitrogen", Nasa9.Nitrogen, ["5.911", "21.462", "38.404", "56.136", "74.295"]),
        ("oxygen", Nasa9.Oxygen, ["6.085", "22.707", "40.613", "59.201", "78.384"]),
        ("methane", Nasa9.Methane, ["8.226", "38.684", "80.186", "128.453", "181.100"]),
        ("ethane", Nasa9.Ethane, ["13.178", "64.438", "132.198", "208.487", "289.307"]),
        ("propane", Nasa9.Propane, ["18.883", "92.469", "188.480", "295.861", "409.256"]),
    ];

    static readonly int[] kelvins = [500, 1000, 1500, 2000, 2500];

    static readonly (string Name, Nasa9 Gas, string[] At)[] older =
    [
        ("carbon dioxide", Nasa9.CarbonDioxide, ["33.397", "61.705", "91.439"]), ("water vapour", Nasa9.WaterVapour, ["26.000", "48.151", "72.790"]),
        ("nitrogen", Nasa9.Nitrogen, ["21.463", "38.405", "56.137"]), ("oxygen", Nasa9.Oxygen, ["22.703", "40.599", "59.175"]),
    ];

    public static IEnumerable<Check> All =>
    [
        .. from row in table from point in kelvins.Zip(row.At)
           select Check.Printed($"{row.Name}, heat from 298.15 to {point.First} K", point.Second, "kJ/mol", Nasa, () => row.Gas.KilojoulesPerMoleAbove298(point.First), Standing.Computed),
        .. from row in older from point in kelvins.Skip(1).Zip(row.At)
           select new Check($"{row.Name}, heat from 298.15 to {point.First} K", point.Second, "kJ/mol", 0.005 * Published.Number(point.Second), Janaf, Standing.Memory, () => row.Gas.KilojoulesPerMoleAbove298(point.First)),
        // The source's gas constant was 8.314510, 6 millionths more than today's.
        .. from row in new[] { ("carbon dioxide", Nasa9.CarbonDioxide, "-393.51"), ("water vapour", Nasa9.WaterVapour, "-241.83"), ("methane", Nasa9.Methane, "-74.60"), ("propane", Nasa9.Propane, "-104.68") }
           select new Check($"{row.Item1}, heat of formation", row.Item3, "kJ/mol", 0.007, Formation, Standing.Read, () => row.Item2.FormationKilojoulesPerMole),
        .. from row in new[] { ("nitrogen", Nasa9.Nitrogen), ("oxygen", Nasa9.Oxygen) }
           select new Check($"{row.Item1}, heat of formation: an element's", "0", "kJ/mol", 0.0005, Formation, Standing.Read, () => row.Item2.FormationKilojoulesPerMole),
        // The standard gives its methane 0.19 kJ/mol and its propane and ethane 0.51.
        Burnt("methane", Nasa9.Methane, 1, 4, "802.55", 0.19), Burnt("propane", Nasa9.Propane, 3, 8, "2043.12", 0.51), Burnt("ethane", Nasa9.Ethane, 2, 6, "1428.65", 0.51),
    ];

    static Check Burnt(string name, Nasa9 gas, int carbon, int hydrogen, string published, double tolerance) => new(
        $"{name}, net heat from heats of formation", published, "kJ/mol", tolerance, "ISO 6976:2016 at 25 °C with its standard uncertainty", Standing.Computed,
        () => gas.FormationKilojoulesPerMole - carbon * Nasa9.CarbonDioxide.FormationKilojoulesPerMole - hydrogen / 2.0 * Nasa9.WaterVapour.FormationKilojoulesPerMole);
}
