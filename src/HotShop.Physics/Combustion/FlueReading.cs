using HotShop.Physics.FuelGases;
using HotShop.Physics.Uncertainty;

namespace HotShop.Physics.Combustion;

/// <summary>What an analyser in the flue tells of a fire, with the doubts of each figure.</summary>
/// <remarks>A doubt acts by the mean slope over its limits, so that a bent curve is followed; oxygen below 0 is no air, and is cut off there.</remarks>
public sealed class FlueReading
{
    const string Oxygen = "oxygen reading", Flue = "flue temperature", Air = "air temperature", Balance = "moist air and gas";

    readonly GasMixture fuel;
    readonly double oxygenFraction;
    readonly bool wet;
    readonly FlueDoubts doubts;

    /// <summary>Above it a sample is as good as air: the fire is out, or the probe draws from outside.</summary>
    public const double MostOxygenFraction = 0.18;

    /// <param name="fuel">What burns.</param>
    /// <param name="oxygenFraction">0 to 0.18.</param>
    /// <param name="wet">Whether the probe sits in the wet gas; an analyser that dries its sample does not.</param>
    /// <param name="doubts">Limits of each input.</param>
    /// <exception cref="ArgumentOutOfRangeException">The oxygen is below 0 or nearly that of air.</exception>
    public FlueReading(GasMixture fuel, double oxygenFraction, bool wet, FlueDoubts doubts)
    {
        ArgumentNullException.ThrowIfNull(doubts);
        if (oxygenFraction is not (>= 0 and <= MostOxygenFraction)) throw new ArgumentOutOfRangeException(nameof(oxygenFraction), oxygenFraction, "expected 0 to 0.18");
        (this.fuel, this.oxygenFraction, this.wet, this.doubts) = (fuel, oxygenFraction, wet, doubts);
        ExcessAir = new Budget(ExcessAirOf(oxygenFraction), OxygenDoubt(ExcessAirOf));
    }

    /// <summary>Excess air, as a fraction. An interval that reaches 0 may mean less air than the gas needs.</summary>
    public Budget ExcessAir { get; }

    /// <summary>Available heat over the gross heat of the fuel.</summary>
    /// <param name="flueCelsius">Flue gas where it leaves the chamber, 100 to 1600 °C.</param>
    /// <param name="airCelsius">Air for burning, -40 to 1200 °C.</param>
    public Budget AvailableOfGross(double flueCelsius, double airCelsius = HeatBalance.StandardCelsius) => Share(b => b.AvailableOfGross, flueCelsius, airCelsius);

    /// <summary>Heat up the flue over the net heat of the fuel, as boiler formulas tell it.</summary>
    /// <param name="flueCelsius">Flue gas where it leaves the chamber, 100 to 1600 °C.</param>
    /// <param name="airCelsius">Air for burning, -40 to 1200 °C.</param>
    public Budget FlueLossOfNet(double flueCelsius, double airCelsius = HeatBalance.StandardCelsius) => Share(b => b.FlueLossOfNet, flueCelsius, airCelsius);

    Budget Share(Func<HeatBalance, double> share, double flueCelsius, double airCelsius)
    {
        double At(double oxygen, double flue, double air) => share(HeatBalance.Of(fuel, ExcessAirOf(oxygen), flue, air));
        return new Budget(At(oxygenFraction, flueCelsius, airCelsius),
            OxygenDoubt(oxygen => At(oxygen, flueCelsius, airCelsius)),
            Doubt(Flue, doubts.FlueKelvin, flueCelsius, HeatBalance.LeastFlueCelsius, HeatBalance.MostFlueCelsius, flue => At(oxygenFraction, flue, airCelsius)),
            Doubt(Air, doubts.AirKelvin, airCelsius, HeatBalance.LeastAirCelsius, HeatBalance.MostAirCelsius, air => At(oxygenFraction, flueCelsius, air)),
            Contribution.Rectangular(Balance, doubts.BalancePercent / 100));
    }

    Contribution OxygenDoubt(Func<double, double> result) => Doubt(Oxygen, doubts.OxygenPercent / 100, oxygenFraction, 0, DryAir.OxygenFraction, result);

    /// <summary>An input within limits; its slope is the mean one over them, where the function is defined.</summary>
    static Contribution Doubt(string name, double limit, double value, double least, double most, Func<double, double> result)
    {
        var (low, high) = (Math.Max(least, value - limit), Math.Min(most, value + limit));
        return Contribution.Rectangular(name, limit, high > low ? (result(high) - result(low)) / (high - low) : 0);
    }

    double ExcessAirOf(double oxygen) => wet ? Combustion.ExcessAir.FromWetOxygen(fuel, oxygen) : Combustion.ExcessAir.FromDryOxygen(fuel, oxygen);
}
