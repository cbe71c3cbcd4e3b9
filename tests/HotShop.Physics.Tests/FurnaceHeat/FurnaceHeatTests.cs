using FsCheck.Xunit;
using HotShop.Physics.FurnaceHeat;
using Xunit;

namespace HotShop.Physics.Tests.FurnaceHeat;

public class FurnaceHeatTests
{
    static readonly FurnaceWall Wall = new(WallLayer.Between(0.115, 400, 0.25, 1000, 0.35), WallLayer.Constant(0.10, 0.12));

    [Property]
    public bool What_comes_through_the_wall_leaves_the_skin(ushort hot, byte emissivity)
    {
        var (inside, skin) = (100 + 1300.0 * hot / ushort.MaxValue, new ShellSurface.Bare(emissivity / 255.0));
        var heat = Wall.InRoom(inside, 25, skin);
        return Math.Abs(skin.WattsPerSquareMetre(heat.ShellCelsius, 25) - Wall.Between(inside, heat.ShellCelsius).WattsPerSquareMetre) < 1e-6 * (1 + heat.WattsPerSquareMetre)
            && Math.Abs(heat.FaceCelsius[0] - inside) < 1e-6;
    }

    [Property]
    public bool Each_layer_passes_the_flux_by_its_mean_conductivity(ushort hot)
    {
        var heat = Wall.InRoom(200 + 1200.0 * hot / ushort.MaxValue, 25, new ShellSurface.Film(12));
        return Wall.Layers.Select((layer, i) =>
        {
            var mean = (heat.FaceCelsius[i] + heat.FaceCelsius[i + 1]) / 2;
            var conductivity = layer.WattsPerMetreKelvinAtZeroCelsius + layer.WattsPerMetreKelvinPerKelvin * mean;
            return conductivity * (heat.FaceCelsius[i] - heat.FaceCelsius[i + 1]) / layer.ThicknessMetres;
        }).All(flux => Math.Abs(flux - heat.WattsPerSquareMetre) < 1e-6 * heat.WattsPerSquareMetre);
    }

    [Property]
    public bool A_wider_hole_passes_a_larger_share(ushort a, ushort b, byte shape)
    {
        double Factor(double walls) => shape % 2 == 0 ? OpeningFactor.Round(walls, 1) : OpeningFactor.Rectangular(walls, walls * (1 + shape % 13), 1);
        var (narrow, wide) = (0.01 + 10.0 * Math.Min(a, b) / ushort.MaxValue, 0.01 + 10.0 * Math.Max(a, b) / ushort.MaxValue);
        // At the seam the two fits of the source meet within 0.0003.
        return Factor(narrow) <= Factor(wide) + 0.0003 && Factor(wide) is > 0 and < 1;
    }

    [Property]
    public bool A_fitted_factor_stays_by_its_error_below_the_bound_of_a_hole(ushort share)
    {
        var walls = 1 + 5.0 * share / ushort.MaxValue;
        return DiskPair.HoleBound(walls, 1) - OpeningFactor.Round(walls, 1) is > -0.002 and < 2 * OpeningFactor.LikelyError;
    }

    [Property]
    public bool What_goes_from_one_disk_to_another_comes_back(byte first, byte second, byte distance)
    {
        var (r1, r2, d) = (1 + first, 1 + second, 1 + distance);
        return Math.Abs(r1 * r1 * DiskPair.ViewFactor(r1, r2, d) - r2 * r2 * DiskPair.ViewFactor(r2, r1, d)) < 1e-9 * r1 * r1;
    }

    [Fact]
    public void A_wall_between_equal_temperatures_passes_nothing() => Assert.Equal(0, Wall.InRoom(25, 25, new ShellSurface.Film(12)).WattsPerSquareMetre, 1e-9);

    [Fact]
    public void A_hole_without_a_wall_passes_all() => Assert.Equal((1.0, 1.0), (OpeningFactor.Round(0.3, 0), OpeningFactor.Rectangular(0.3, 0.4, 0)));

    [Fact]
    public void An_opening_closed_all_the_time_loses_nothing() => Assert.Equal(0, FurnaceOpening.Round(0.2, 0.1).RadiatedKilowatts(1150, 0.9, 20, 0));

    // A layer whose conductivity falls with heat passes only so much: no temperature drives more.
    [Fact]
    public void A_layer_that_conducts_less_when_hot_has_an_end()
    {
        var falling = new FurnaceWall(WallLayer.Between(0.1, 0, 1.0, 1000, 0.5));
        Assert.Equal(0.75 * 1000 / 0.1, falling.Between(1000, 0).WattsPerSquareMetre, 1e-6);
        Assert.Equal(double.PositiveInfinity, falling.Layers[0].HotCelsius(0, 11_000));
        Assert.Equal(double.PositiveInfinity, falling.Layers[0].HotCelsius(2_500, 1));
    }

    [Fact]
    public void What_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => OpeningFactor.Round(0, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => OpeningFactor.Rectangular(0.1, double.NaN, 0.1));
        Assert.Throws<ArgumentOutOfRangeException>(() => WallLayer.Constant(0.1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => WallLayer.Between(0.1, 500, 0.2, 400, 0.3));
        Assert.Throws<ArgumentOutOfRangeException>(() => Wall.InRoom(20, 25, new ShellSurface.Film(12)));
        Assert.Throws<ArgumentOutOfRangeException>(() => Wall.Between(20, 25));
        Assert.Throws<ArgumentException>(() => new FurnaceWall());
        Assert.Throws<ArgumentOutOfRangeException>(() => HoldingHeat.FuelKilowatts(5, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => new ShellSurface.Bare(0.9).WattsPerSquareMetre(-20, -30));
    }
}
