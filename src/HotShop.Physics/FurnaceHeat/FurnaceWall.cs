namespace HotShop.Physics.FurnaceHeat;

/// <summary>A flat wall of layers, the hot one first, at rest: nothing of it warms or cools. Heat through edges and corners, anchors and cracks comes on
/// top.</summary>
public sealed class FurnaceWall
{
    readonly WallLayer[] layers;

    public FurnaceWall(params IReadOnlyList<WallLayer> layers)
    {
        ArgumentNullException.ThrowIfNull(layers);
        if (layers.Count == 0) throw new ArgumentException("a wall has a layer at least", nameof(layers));
        this.layers = [.. layers];
    }

    public IReadOnlyList<WallLayer> Layers => layers;

    /// <summary>Between two known faces.</summary>
    /// <param name="hotCelsius">Of the hot face, °C.</param>
    /// <param name="shellCelsius">Of the outer face, °C, at most the hot one's.</param>
    public WallHeat Between(double hotCelsius, double shellCelsius)
    {
        NotBelow(hotCelsius, shellCelsius);
        var most = 1.0;
        while (HotCelsius(shellCelsius, most) < hotCelsius) most *= 2;
        var flux = Halving.Root(0, most, q => HotCelsius(shellCelsius, q) < hotCelsius);
        return Heat(flux, shellCelsius);
    }

    /// <summary>With the outer skin in a room: its temperature is where as much leaves the skin as comes through the wall.</summary>
    /// <param name="hotCelsius">Of the hot face, °C.</param>
    /// <param name="airCelsius">Of the room, °C, at most the hot face's.</param>
    /// <param name="skin">How the skin gives its heat off.</param>
    public WallHeat InRoom(double hotCelsius, double airCelsius, ShellSurface skin)
    {
        ArgumentNullException.ThrowIfNull(skin);
        NotBelow(hotCelsius, airCelsius);
        var shell = Halving.Root(airCelsius, hotCelsius, s => HotCelsius(s, skin.WattsPerSquareMetre(s, airCelsius)) < hotCelsius);
        return Heat(skin.WattsPerSquareMetre(shell, airCelsius), shell);
    }

    double HotCelsius(double shellCelsius, double flux)
    {
        var celsius = shellCelsius;
        for (var i = layers.Length - 1; i >= 0; i--) celsius = layers[i].HotCelsius(celsius, flux);
        return celsius;
    }

    WallHeat Heat(double flux, double shellCelsius)
    {
        var faces = new double[layers.Length + 1];
        faces[^1] = shellCelsius;
        for (var i = layers.Length - 1; i >= 0; i--) faces[i] = layers[i].HotCelsius(faces[i + 1], flux);
        return new WallHeat(flux, faces);
    }

    static void NotBelow(double hotCelsius, double coldCelsius)
    {
        if (Require.Celsius(hotCelsius) < Require.Celsius(coldCelsius)) throw new ArgumentOutOfRangeException(nameof(hotCelsius), hotCelsius, "expected at least the temperature outside");
    }
}

/// <summary>Heat through a wall.</summary>
/// <param name="WattsPerSquareMetre">W/m².</param>
/// <param name="FaceCelsius">The faces of its layers from the hot side, °C; the last is the skin.</param>
public sealed record WallHeat(double WattsPerSquareMetre, IReadOnlyList<double> FaceCelsius)
{
    public double ShellCelsius => FaceCelsius[^1];
}
