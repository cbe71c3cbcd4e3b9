using FsCheck.Xunit;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class PieceShapeTests
{
    [Property]
    public bool A_ball_of_a_mass_has_that_mass(ushort grams)
    {
        var kilograms = (1 + grams) / 1000.0;
        return Math.Abs(PieceShape.Ball.OfKilograms(kilograms, 2360).Kilograms(2360) - kilograms) < 1e-9 * (1 + kilograms);
    }

    [Fact]
    public void A_wall_as_thick_as_the_radius_makes_a_solid_ball() =>
        Assert.Equal(new PieceShape.Ball(0.1).CubicMetres, new PieceShape.BlownBall(0.1, 0.05).CubicMetres, 1e-12);

    [Fact]
    public void A_bottom_as_high_as_the_tumbler_makes_a_solid_cylinder() =>
        Assert.Equal(new PieceShape.Cylinder(0.08, 0.12).CubicMetres, new PieceShape.Tumbler(0.08, 0.12, 0.004, 0.12).CubicMetres, 1e-12);

    [Fact]
    public void Glass_thicker_than_the_piece_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => new PieceShape.BlownBall(0.1, 0.051));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PieceShape.Tumbler(0.1, 0.1, 0.051, 0.01));
        Assert.Throws<ArgumentOutOfRangeException>(() => new PieceShape.Tumbler(0.1, 0.1, 0.01, 0.11));
    }
}
