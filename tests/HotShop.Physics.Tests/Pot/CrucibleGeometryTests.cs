using FsCheck.Xunit;
using HotShop.Physics.Pot;
using Xunit;

namespace HotShop.Physics.Tests.Pot;

public class CrucibleGeometryTests
{
    static readonly CylinderPot Cylinder = new(radiusMetres: 0.20, heightMetres: 0.45);
    static readonly TaperedPot Cone = new(bottomRadiusMetres: 0.16, topRadiusMetres: 0.22, heightMetres: 0.40);
    static readonly RoundedPot Rounded = new(radiusMetres: 0.20, cornerRadiusMetres: 0.08, heightMetres: 0.45);

    [Fact]
    public void Depth_to_mass_and_back_is_the_same_depth_in_ten_thousand_pots()
    {
        var random = new Random(20260301);
        for (var i = 0; i < 10_000; i++)
        {
            var glass = new GlassMass(RandomPot(random, i), 2200 + 600 * random.NextDouble());
            var depth = glass.Geometry.HeightMetres * random.NextDouble();
            var kilograms = glass.KilogramsAtDepth(depth);
            Assert.True(Math.Abs(glass.DepthMetres(kilograms) - depth) < 1e-9 * glass.Geometry.HeightMetres, $"pot {i}: {glass.Geometry}, depth {depth:R} m");
            Assert.True(Math.Abs(glass.KilogramsAtDepth(glass.DepthMetres(kilograms)) - kilograms) < 1e-9 * glass.FullKilograms, $"pot {i}: {glass.Geometry}, {kilograms:R} kg");
        }
    }

    /// <summary>Pots from a thimble to a day tank, each shape in its turn.</summary>
    static CrucibleGeometry RandomPot(Random random, int turn)
    {
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        var (radius, height) = (Between(0.03, 0.60), Between(0.05, 0.90));
        return (turn % 5) switch
        {
            0 => new CylinderPot(radius, height),
            1 => new TaperedPot(radius, radius * Between(0.4, 2.5), height),
            2 => new RoundedPot(radius, Math.Min(radius, height) * Between(0.01, 1), height),
            3 => new RoundedPot(Math.Min(radius, height), Math.Min(radius, height), height),
            _ => new MeasuredPot([.. Steps(random, height, Math.PI * radius * radius * height)]),
        };
    }

    /// <summary>Marks that rise by uneven steps, as somebody pours them.</summary>
    static IEnumerable<(double DepthMetres, double CubicMetres)> Steps(Random random, double height, double cubicMetres)
    {
        var steps = Enumerable.Range(0, 2 + random.Next(8)).Select(_ => (Depth: 0.05 + random.NextDouble(), Volume: 0.05 + random.NextDouble())).ToList();
        var (depths, volumes) = (steps.Sum(s => s.Depth), steps.Sum(s => s.Volume));
        var (depth, volume) = (0.0, 0.0);
        foreach (var step in steps)
        {
            (depth, volume) = (depth + height * step.Depth / depths, volume + cubicMetres * step.Volume / volumes);
            yield return (depth, volume);
        }
    }

    [Property]
    public bool More_glass_stands_higher(byte pot, ushort a, ushort b)
    {
        var glass = new GlassMass(AnyPot(pot));
        var (less, more) = (glass.FullKilograms * Math.Min(a, b) / ushort.MaxValue, glass.FullKilograms * Math.Max(a, b) / ushort.MaxValue);
        return glass.DepthMetres(less) <= glass.DepthMetres(more) && (a == b || glass.DepthMetres(less) < glass.DepthMetres(more));
    }

    [Property]
    public bool The_surface_is_the_slope_of_the_volume(byte pot, ushort share)
    {
        var geometry = AnyPot(pot);
        const double step = 1e-6;
        var depth = step + (geometry.HeightMetres - 2 * step) * share / ushort.MaxValue;
        var slope = (geometry.VolumeCubicMetres(depth + step) - geometry.VolumeCubicMetres(depth - step)) / (2 * step);
        return Math.Abs(slope - geometry.SurfaceSquareMetres(depth)) < 1e-4;
    }

    [Fact]
    public void Walls_all_but_straight_make_a_cylinder() =>
        Assert.Equal(Cylinder.DepthMetres(0.03), new TaperedPot(0.20, 0.20 + 1e-13, 0.45).DepthMetres(0.03), 1e-12);

    [Fact]
    public void More_than_the_pot_holds_stands_at_the_rim() => Assert.Equal(0.45, new GlassMass(Cylinder).DepthMetres(500));

    [Theory, InlineData(-0.01), InlineData(double.NaN)]
    public void A_depth_below_the_bottom_is_refused(double depth) => Assert.Throws<ArgumentOutOfRangeException>(() => Cylinder.VolumeCubicMetres(depth));

    [Fact]
    public void A_corner_larger_than_the_pot_is_refused() => Assert.Throws<ArgumentOutOfRangeException>(() => new RoundedPot(0.2, 0.21, 0.45));

    [Fact]
    public void A_table_of_a_cylinder_is_the_cylinder()
    {
        MeasuredPot measured = new([.. Enumerable.Range(1, 9).Select(i => (0.05 * i, Cylinder.VolumeCubicMetres(0.05 * i)))]);
        Assert.Equal(Cylinder.VolumeCubicMetres(0.333), measured.VolumeCubicMetres(0.333), 1e-12);
        Assert.Equal(Cylinder.SurfaceSquareMetres(0), measured.SurfaceSquareMetres(0.02), 1e-9);
    }

    [Fact]
    public void A_table_that_falls_or_has_one_mark_is_refused()
    {
        Assert.Throws<ArgumentException>(() => new MeasuredPot((0.1, 0.01)));
        Assert.Throws<ArgumentException>(() => new MeasuredPot((0.1, 0.01), (0.2, 0.009)));
        Assert.Throws<ArgumentException>(() => new MeasuredPot((0.2, 0.01), (0.1, 0.02)));
        Assert.Throws<ArgumentOutOfRangeException>(() => new MeasuredPot((0.1, double.NaN), (0.2, 0.02)));
    }

    static CrucibleGeometry AnyPot(byte pot) => (pot % 5) switch
    {
        0 => Cylinder, 1 => Cone, 2 => Rounded, 3 => new TaperedPot(0.24, 0.19, 0.38), _ => new MeasuredPot((0.05, 0.004), (0.10, 0.010), (0.20, 0.024), (0.40, 0.057)),
    };
}
