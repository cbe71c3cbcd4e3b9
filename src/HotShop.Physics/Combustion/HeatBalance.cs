using HotShop.Physics.FuelGases;

namespace HotShop.Physics.Combustion;

/// <summary>Where the heat of a fuel goes when its flue gas leaves at a temperature: what stays in the chamber is available, the rest goes up the flue.</summary>
/// <remarks>
/// Complete combustion, dry air, no dissociation, fuel at 25 °C, water leaving as vapour. Range: flue gas from 100 °C, below which water may condense, to 1600 °C. Dissociation, left out,
/// takes less than 0.2 points of the gross heat at 1600 °C with 2 % oxygen and about half a point without any (from the equilibrium of carbon dioxide); charts in print differ by some points.
/// Sources: heating values ISO 6976:2016 at 25 °C; enthalpies NASA/TP-2002-211556.
/// </remarks>
public sealed record HeatBalance
{
    /// <summary>Ends of the range, °C.</summary>
    public const double LeastFlueCelsius = 100, MostFlueCelsius = 1600, LeastAirCelsius = -40, MostAirCelsius = 1200;

    readonly double grossKilojoules, netKilojoules, flueKilojoules, airKilojoules;

    HeatBalance(GasMixture fuel, FlueGas flue, double flueCelsius, double airCelsius)
    {
        (Flue, FlueCelsius, AirCelsius) = (flue, flueCelsius, airCelsius);
        (grossKilojoules, netKilojoules) = (fuel.GrossKilojoulesPerMole(ReferenceTemperature.Celsius25), fuel.NetKilojoulesPerMole(ReferenceTemperature.Celsius25));
        (flueKilojoules, airKilojoules) = (FlueKilojoules(flue, PhysicalConstants.Kelvin(flueCelsius)), AirKilojoules(flue, PhysicalConstants.Kelvin(airCelsius)));
    }

    /// <summary>The balance of a fire.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="excessAir">As a fraction, 0 or above; see <see cref="Combustion.ExcessAir"/>.</param>
    /// <param name="flueCelsius">Flue gas where it leaves the chamber, 100 to 1600 °C.</param>
    /// <param name="airCelsius">Air for burning, -40 to 1200 °C: warm where a recuperator heats it.</param>
    /// <exception cref="ArgumentOutOfRangeException">A temperature outside its range.</exception>
    public static HeatBalance Of(GasMixture fuel, double excessAir, double flueCelsius, double airCelsius = StandardCelsius)
    {
        if (!IsFlue(flueCelsius)) throw new ArgumentOutOfRangeException(nameof(flueCelsius), flueCelsius, "expected 100 to 1600 °C");
        if (!IsAir(airCelsius)) throw new ArgumentOutOfRangeException(nameof(airCelsius), airCelsius, "expected -40 to 1200 °C");
        return new HeatBalance(fuel, FlueGas.Of(fuel, excessAir), flueCelsius, airCelsius);
    }

    /// <summary>Whether the balance holds at these temperatures of flue gas and air.</summary>
    public static bool Covers(double flueCelsius, double airCelsius = StandardCelsius) => IsFlue(flueCelsius) && IsAir(airCelsius);

    static bool IsFlue(double celsius) => celsius is >= LeastFlueCelsius and <= MostFlueCelsius;

    static bool IsAir(double celsius) => celsius is >= LeastAirCelsius and <= MostAirCelsius;

    /// <summary>°C at which fuel and air bring no heat along, 25.</summary>
    public const double StandardCelsius = Nasa9.ReferenceKelvin + PhysicalConstants.AbsoluteZeroCelsius;

    public FlueGas Flue { get; }
    public double FlueCelsius { get; }
    public double AirCelsius { get; }

    /// <summary>Available heat over the gross heat of the fuel; below 0 the fire cannot hold that temperature. Heat that warm air brings back counts as available.</summary>
    public double AvailableOfGross => AvailableKilojoules / grossKilojoules;

    /// <summary>Available heat over the net heat of the fuel.</summary>
    public double AvailableOfNet => AvailableKilojoules / netKilojoules;

    /// <summary>Heat up the flue over the gross heat of the fuel, that of the water vapour included: what <see cref="AvailableOfGross"/> leaves of 1.</summary>
    public double FlueLossOfGross => 1 - AvailableOfGross;

    /// <summary>Heat up the flue over the net heat of the fuel, as boiler formulas tell it.</summary>
    public double FlueLossOfNet => 1 - AvailableOfNet;

    /// <summary>Fuel saved when this fire replaces another that gives as much heat, as a fraction; below 0 where it burns more.</summary>
    public double FuelSavedAgainst(HeatBalance before)
    {
        ArgumentNullException.ThrowIfNull(before);
        if (AvailableOfGross <= 0 || before.AvailableOfGross <= 0) throw new ArgumentException("a fire without available heat saves nothing", nameof(before));
        return 1 - before.AvailableOfGross / AvailableOfGross;
    }

    double AvailableKilojoules => netKilojoules + airKilojoules - flueKilojoules;

    static double FlueKilojoules(FlueGas flue, double kelvin) =>
        flue.CarbonDioxideMoles * Nasa9.CarbonDioxide.KilojoulesPerMoleAbove298(kelvin)
        + flue.WaterMoles * Nasa9.WaterVapour.KilojoulesPerMoleAbove298(kelvin)
        + flue.NitrogenMoles * Nasa9.Nitrogen.KilojoulesPerMoleAbove298(kelvin)
        + flue.OxygenMoles * Nasa9.Oxygen.KilojoulesPerMoleAbove298(kelvin)
        + flue.InertMoles * MonatomicKilojoulesPerMole(kelvin);

    static double AirKilojoules(FlueGas flue, double kelvin) =>
        flue.AirMoles * (DryAir.OxygenFraction * Nasa9.Oxygen.KilojoulesPerMoleAbove298(kelvin) + (1 - DryAir.OxygenFraction) * Nasa9.Nitrogen.KilojoulesPerMoleAbove298(kelvin));

    /// <summary>Argon and helium: 5/2 R for each kelvin, exact for a gas of single atoms.</summary>
    static double MonatomicKilojoulesPerMole(double kelvin) => 5.0 / 2 * PhysicalConstants.GasConstant * (kelvin - Nasa9.ReferenceKelvin) / 1000;
}
