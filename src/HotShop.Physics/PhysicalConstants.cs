namespace HotShop.Physics;

/// <summary>Exact and measured constants in SI units.</summary>
public static class PhysicalConstants
{
    /// <summary>0 K in °C; exact by definition of the Celsius scale.</summary>
    public const double AbsoluteZeroCelsius = -273.15;

    /// <summary>Stefan-Boltzmann constant, W/(m² K⁴). Source: CODATA 2018.</summary>
    public const double StefanBoltzmann = 5.670374419e-8;

    /// <summary>Second radiation constant h c / k, m K. Source: CODATA 2018.</summary>
    public const double SecondRadiation = 1.438776877e-2;

    /// <summary>Standard acceleration of free fall, m/s²; exact by convention (CGPM 1901).</summary>
    public const double StandardGravity = 9.80665;

    /// <summary>Molar gas constant, J/(mol K). Source: CODATA 2018; exact by definition, rounded to its tenth digit.</summary>
    public const double GasConstant = 8.314462618;

    /// <summary>Kelvin of a temperature in °C.</summary>
    public static double Kelvin(double celsius) => celsius - AbsoluteZeroCelsius;
}
