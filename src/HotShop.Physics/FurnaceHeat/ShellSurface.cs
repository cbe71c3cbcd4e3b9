using HotShop.Physics.Energy;

namespace HotShop.Physics.FurnaceHeat;

/// <summary>How a furnace's outer skin gives its heat to the room.</summary>
public abstract record ShellSurface
{
    ShellSurface() { }

    /// <summary>Heat given off, W/m²; 0 and below where the air is as warm or warmer.</summary>
    /// <param name="shellCelsius">Of the skin, °C.</param>
    /// <param name="airCelsius">Of the room, °C.</param>
    public abstract double WattsPerSquareMetre(double shellCelsius, double airCelsius);

    /// <summary>Convection and radiation together as one coefficient.</summary>
    /// <param name="WattsPerSquareMetreKelvin">Above 0; 10 to 15 for a warm skin in a room, common practice.</param>
    public sealed record Film(double WattsPerSquareMetreKelvin) : ShellSurface
    {
        public double WattsPerSquareMetreKelvin { get; } = Require.Positive(WattsPerSquareMetreKelvin);

        public override double WattsPerSquareMetre(double shellCelsius, double airCelsius) =>
            WattsPerSquareMetreKelvin * (Require.Celsius(shellCelsius) - Require.Celsius(airCelsius));
    }

    /// <summary>Convection and radiation each by its own law.</summary>
    /// <param name="Emissivity">0 to 1; 0.9 for paint and oxidised steel, 0.3 for bright metal. Common practice.</param>
    /// <param name="Facing">Which way the skin looks.</param>
    /// <param name="WindMetresPerSecond">Along it, m/s; 0 in a still room.</param>
    /// <remarks>
    /// Convection: q = C (1/24)^0.2 (1/T_mean)^0.181 ΔT^1.266 √(1 + 1.277 V) in Btu/(h ft²), °F and mph. Source: Oak Ridge National Laboratory, published
    /// process-heating calculations, wall heat loss (documentation v1.0.11). It asks for a mean of skin and air above 0 °F.
    /// </remarks>
    public sealed record Bare(double Emissivity, ShellFacing Facing = ShellFacing.Sideways, double WindMetresPerSecond = 0) : ShellSurface
    {
        const double SquareMetresPerSquareFoot = 0.3048 * 0.3048, MetresPerSecondPerMileAnHour = 0.44704, SecondsPerHour = 3600;

        public double Emissivity { get; } = Require.Share(Emissivity);

        public double WindMetresPerSecond { get; } = Require.NotNegative(WindMetresPerSecond);

        public override double WattsPerSquareMetre(double shellCelsius, double airCelsius) =>
            ConvectionWattsPerSquareMetre(shellCelsius, airCelsius) + RadiationWattsPerSquareMetre(shellCelsius, airCelsius);

        /// <summary>Carried off by air, W/m².</summary>
        public double ConvectionWattsPerSquareMetre(double shellCelsius, double airCelsius)
        {
            var meanFahrenheit = Require.Positive(Fahrenheit((Require.Celsius(shellCelsius) + Require.Celsius(airCelsius)) / 2));
            var fahrenheitAbove = Fahrenheit(shellCelsius) - Fahrenheit(airCelsius);
            var wind = Math.Sqrt(1 + 1.277 * WindMetresPerSecond / MetresPerSecondPerMileAnHour);
            var btuPerHourSquareFoot = Shape * Math.Pow(24, -0.2) * Math.Pow(meanFahrenheit, -0.181) * Math.Sign(fahrenheitAbove) * Math.Pow(Math.Abs(fahrenheitAbove), 1.266) * wind;
            return btuPerHourSquareFoot * EnergyUnits.JoulesPerBtu / SecondsPerHour / SquareMetresPerSquareFoot;
        }

        /// <summary>Radiated, W/m².</summary>
        public double RadiationWattsPerSquareMetre(double shellCelsius, double airCelsius) =>
            Emissivity * PhysicalConstants.StefanBoltzmann
            * (Math.Pow(PhysicalConstants.Kelvin(Require.Celsius(shellCelsius)), 4) - Math.Pow(PhysicalConstants.Kelvin(Require.Celsius(airCelsius)), 4));

        // Shape coefficients for a skin warmer than the air; source as above, table of surfaces.
        double Shape => Facing switch { ShellFacing.Up => 1.79, ShellFacing.Down => 0.89, _ => 1.394 };

        static double Fahrenheit(double celsius) => celsius * 1.8 + 32;
    }
}

/// <summary>Which way a furnace's skin looks: warm air leaves a roof more easily than a floor.</summary>
public enum ShellFacing
{
    Sideways,

    Up,

    Down,
}
