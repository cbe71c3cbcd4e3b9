namespace HotShop.Simulator;

/// <summary>
/// What everybody knows about the invented studio "Quillmere Hot Shop": names, plates on the appliances and the pot's drawing.
/// A service may be configured with these; what the seed hides is in <see cref="Chance.HiddenParameters"/>.
/// </summary>
public static class Quillmere
{
    public const string Site = "quillmere";
    public const string Furnace = "furnace-1";
    public const string GloryHole = "glory-hole-1";
    public const string FirstAnnealer = "annealer-1";
    public const string SecondAnnealer = "annealer-2";
    public const string Shop = "shop";

    /// <summary>Not an appliance: the tablet at the benches through which log entries are sent.</summary>
    public const string Bench = "bench";

    public static readonly IReadOnlyList<string> Appliances = [Furnace, GloryHole, FirstAnnealer, SecondAnnealer, Shop];

    /// <summary>Inner radius of the cylindrical pot, in m.</summary>
    public const double PotRadiusMetres = 0.23;

    /// <summary>Inner height from bottom to rim, in m.</summary>
    public const double PotHeightMetres = 0.45;

    /// <summary>Depth to which the crew charges, in m: about 15 % freeboard (common practice 10 to 15 %).</summary>
    public const double FullDepthMetres = 0.38;

    /// <summary>
    /// Density of the melt at 1150 °C, in kg/m³, for a window-type soda-lime glass (partial molar volumes of Lange 1997).
    /// </summary>
    public const double NominalMeltKilogramsPerCubicMetre = 2360;

    /// <summary>
    /// Glass left from a kilogram of the studio's batch: sand 60, soda ash 20, limestone 10, dolomite 6, feldspar 4 kg leave 84.44 kg
    /// (standard atomic weights).
    /// </summary>
    public const double BatchYield = 0.8444;

    /// <summary>
    /// What the crew believes a gather of each size weighs, in kg (common practice: small 0.1 to 0.2, medium 0.3 to 0.5, large 0.6 to
    /// 1).
    /// </summary>
    public const double SmallGatherKilograms = 0.15, MediumGatherKilograms = 0.40, LargeGatherKilograms = 0.80;

    /// <summary>Gross calorific value printed on the gas bill, in MJ/m³ at 15 °C and 101.325 kPa.</summary>
    public const double BilledCalorificMegajoulesPerCubicMetre = 39.4;

    /// <summary>What the gas meters are assumed to see: °C and mbar above the atmosphere.</summary>
    public const double AssumedGasCelsius = 18, AssumedGasGaugeMillibar = 21;

    public const double FirstAnnealerPlateKilowatts = 8, SecondAnnealerPlateKilowatts = 10;

    /// <summary>Where the annealers wait while ware is put in, in °C; a soft studio glass has its annealing point near 495 °C.</summary>
    public const double AnnealingCelsius = 495;

    public const double WorkingCelsius = 1150, CookCelsius = 1200, SqueezeCelsius = 1110, IdleCelsius = 1090, GloryHoleCelsius = 1200;

    /// <summary>Device that publishes an appliance's channels.</summary>
    public static string DeviceOf(string appliance) => $"dev-{appliance}";
}
