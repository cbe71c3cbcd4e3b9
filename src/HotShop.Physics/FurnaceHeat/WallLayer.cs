namespace HotShop.Physics.FurnaceHeat;

/// <summary>A layer of brick, board or blanket whose conductivity goes straight with temperature.</summary>
public sealed record WallLayer
{
    WallLayer(double thicknessMetres, double atZero, double perKelvin) =>
        (ThicknessMetres, WattsPerMetreKelvinAtZeroCelsius, WattsPerMetreKelvinPerKelvin) = (Require.Positive(thicknessMetres), Require.Finite(atZero), Require.Finite(perKelvin));

    public double ThicknessMetres { get; }

    /// <summary>Conductivity at 0 °C, W/(m K).</summary>
    public double WattsPerMetreKelvinAtZeroCelsius { get; }

    /// <summary>Its rise, W/(m K) per K.</summary>
    public double WattsPerMetreKelvinPerKelvin { get; }

    /// <summary>One conductivity at all temperatures, W/(m K).</summary>
    public static WallLayer Constant(double thicknessMetres, double wattsPerMetreKelvin) => new(thicknessMetres, Require.Positive(wattsPerMetreKelvin), 0);

    /// <summary>Conductivity at two temperatures, as a data sheet gives it.</summary>
    public static WallLayer Between(double thicknessMetres, double coldCelsius, double wattsPerMetreKelvinCold, double hotCelsius, double wattsPerMetreKelvinHot)
    {
        if (Require.Celsius(hotCelsius) <= Require.Celsius(coldCelsius)) throw new ArgumentOutOfRangeException(nameof(hotCelsius), hotCelsius, "expected above the colder of the two");
        var rise = (Require.Positive(wattsPerMetreKelvinHot) - Require.Positive(wattsPerMetreKelvinCold)) / (hotCelsius - coldCelsius);
        return new WallLayer(thicknessMetres, wattsPerMetreKelvinCold - rise * coldCelsius, rise);
    }

    /// <summary>Temperature of the hot face when a flux leaves by a cold face, °C; infinite where no temperature drives so much.</summary>
    internal double HotCelsius(double coldCelsius, double wattsPerSquareMetre)
    {
        // k at the mean of the two faces: (a + b (h + c)/2) (h - c) = q x, a quadratic in the rise h - c.
        var cold = WattsPerMetreKelvinAtZeroCelsius + WattsPerMetreKelvinPerKelvin * coldCelsius;
        if (cold <= 0) return double.PositiveInfinity;
        var inside = cold * cold + 2 * WattsPerMetreKelvinPerKelvin * wattsPerSquareMetre * ThicknessMetres;
        return inside < 0 ? double.PositiveInfinity : coldCelsius + 2 * wattsPerSquareMetre * ThicknessMetres / (cold + Math.Sqrt(inside));
    }
}
