using FsCheck.Xunit;
using HotShop.Physics.Pot;
using Xunit;

namespace HotShop.Physics.Tests.Pot;

public class CrucibleGeometryTests
{
    static readonly CylinderPot Cylinder = new(radiusMetres: 0.20, heightMetres: 0.45);
    static readonly TaperedPot Cone = new(bottomRadiusMetres: 0.16, topRadiusMetres: 0.22, heightMetres: 0.40);
    static readonly RoundedPot Rounded = new(radiusMetres: 0.20, cornerRadiusMetres: 0.08, heightMetres: 0.45);

    // Expected values computed from the closed forms of solid geometry, the rounded corner also by numerical quadrature.
    [Fact]
    public void A_cylinder_35_cm_deep_holds_104_kilograms()
    {
        var glass = new GlassMass(Cylinder);
        Assert.Equal(103.80, glass.KilogramsAtDepth(0.35), 0.005);
        Assert.Equal(0.003372, 1 / glass.KilogramsPerMetre(0.35), 0.0000005);
        Assert.Equal(1.48, glass.KilogramsPerMetre(0.35) * 0.005, 0.005);   // a dip read to 5 mm
    }

    [Fact]
    public void A_tapered_pot_has_the_volume_of_its_cone()
    {
        Assert.Equal(0.045742, Cone.FullCubicMetres, 0.0000005);
        Assert.Equal(0.31756, new GlassMass(Cone).DepthMetres(80), 0.000005);
    }

    [Fact]
    public void A_rounded_bottom_holds_less_than_a_flat_one()
    {
        Assert.Equal(0.0025389, Rounded.VolumeCubicMetres(0.03), 0.00000005);
        Assert.Equal(0.0084814, Rounded.VolumeCubicMetres(0.08), 0.00000005);
        Assert.Equal(100.09, new GlassMass(Rounded).KilogramsAtDepth(0.35), 0.005);
    }

    // A corner as large as the pot is half a ball: the cap of 0.10 m of a ball of 0.20 m holds 5.236 L.
    [Fact]
    public void A_half_round_bottom_is_the_cap_of_a_ball() =>
        Assert.Equal(0.005236, new RoundedPot(0.20, 0.20, 0.45).VolumeCubicMetres(0.10), 0.0000005);

    [Property]
    public bool Depth_to_mass_and_back_is_the_same_depth(byte pot, ushort share)
    {
        var glass = new GlassMass(AnyPot(pot));
        var depth = glass.Geometry.HeightMetres * share / ushort.MaxValue;
        return Math.Abs(glass.DepthMetres(glass.KilogramsAtDepth(depth)) - depth) < 1e-9;
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

    static CrucibleGeometry AnyPot(byte pot) => (pot % 4) switch { 0 => Cylinder, 1 => Cone, 2 => Rounded, _ => new TaperedPot(0.24, 0.19, 0.38) };
}
