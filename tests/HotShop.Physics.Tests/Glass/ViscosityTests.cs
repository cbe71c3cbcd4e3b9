using FsCheck.Xunit;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class ViscosityTests
{
    public static TheoryData<string> Profiles => [.. GlassProfile.All.Keys];

    [Theory, MemberData(nameof(Profiles))]
    public void Every_glass_stiffens_as_it_cools(string id)
    {
        var curve = GlassProfile.All[id].Viscosity;
        Assert.All(Enumerable.Range(430, 1000), celsius => Assert.True(curve.PascalSeconds(celsius) > curve.PascalSeconds(celsius + 1)));
    }

    [Theory, MemberData(nameof(Profiles))]
    public void The_named_points_follow_one_another(string id)
    {
        var glass = GlassProfile.All[id];
        double[] points = [glass.MeltingPointCelsius, glass.WorkingPointCelsius, glass.SofteningPointCelsius, glass.AnnealingPointCelsius, glass.StrainPointCelsius];
        Assert.Equal(points.OrderDescending(), points);
    }

    [Property]
    public bool Viscosity_to_degrees_and_back_is_the_same_viscosity(ushort share)
    {
        var log = 1 + 14.0 * share / ushort.MaxValue;
        var curve = GlassProfile.SoftStudioSodaLime.Viscosity;
        return Math.Abs(curve.Log10DecipascalSeconds(curve.CelsiusAt(log)) - log) < 1e-9;
    }

    [Property]
    public bool A_curve_through_three_of_its_own_points_is_itself(byte a, byte b, byte t0)
    {
        ViscosityCurve curve = new(-3 + a / 128.0, 3500 + 10 * b, 100 + t0);
        var fitted = ViscosityCurve.Through(new(2, curve.CelsiusAt(2)), new(7.6, curve.CelsiusAt(7.6)), new(13, curve.CelsiusAt(13)));
        return Math.Abs(fitted.A - curve.A) < 1e-8 && Math.Abs(fitted.BKelvin - curve.BKelvin) < 1e-4 && Math.Abs(fitted.T0Celsius - curve.T0Celsius) < 1e-6;
    }

    [Fact]
    public void The_order_of_the_three_points_does_not_matter()
    {
        ViscosityPoint soft = new(2.5, 1293), middle = new(7.6, 725), stiff = new(13, 556);
        var (forth, back) = (ViscosityCurve.Through(soft, middle, stiff), ViscosityCurve.Through(stiff, soft, middle));
        Assert.Equal(forth.A, back.A, 1e-9);
        Assert.Equal(forth.T0Celsius, back.T0Celsius, 1e-6);
    }

    [Theory]
    [InlineData(1000, 700, 400)]    // a straight line: T0 would be far below absolute zero
    [InlineData(500, 700, 1000)]    // softer as it cools
    [InlineData(700, 700, 700)]
    public void Points_of_no_glass_give_no_curve(double soft, double middle, double stiff)
    {
        Assert.Null(ViscosityCurve.ThroughOrNull(new(4, soft), new(7.6, middle), new(13, stiff)));
        Assert.Throws<ArgumentException>(() => ViscosityCurve.Through(new(4, soft), new(7.6, middle), new(13, stiff)));
    }

    [Fact]
    public void A_constant_printed_for_pascal_seconds_moves_by_one()
    {
        var curve = ViscosityCurve.OfPascalSeconds(-2.585, 4215, 263);
        Assert.Equal(-1.585, curve.A, 12);
        Assert.Equal(Math.Pow(10, -2.585 + 4215 / (1150.0 - 263)), curve.PascalSeconds(1150), 1e-9);
    }

    [Fact]
    public void At_and_below_its_pole_a_curve_is_refused()
    {
        var curve = GlassProfile.WindowSodaLime.Viscosity;
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.PascalSeconds(curve.T0Celsius));
        Assert.Throws<ArgumentOutOfRangeException>(() => curve.CelsiusAt(curve.A));
    }

    [Theory]
    [InlineData("SiO2", 42)]
    public void Fluegels_model_begins_at_its_own_limit(string oxide, double least)
    {
        Assert.True(IsWithin(ViscosityModel.Fluegel2007, Moles(oxide, least + 0.02, Oxide.PbO, 15, Oxide.Na2O, 28)));
        Assert.False(IsWithin(ViscosityModel.Fluegel2007, Moles(oxide, least - 0.02, Oxide.PbO, 15, Oxide.Na2O, 28)));
    }

    // The ranges that the paper states; the last five are our own caution.
    [Theory]
    [InlineData(Oxide.Na2O, 42), InlineData(Oxide.K2O, 30), InlineData(Oxide.CaO, 33), InlineData(Oxide.MgO, 16), InlineData(Oxide.Al2O3, 10), InlineData(Oxide.B2O3, 17)]
    [InlineData(Oxide.PbO, 50), InlineData(Oxide.Li2O, 33), InlineData(Oxide.ZnO, 2.85)]
    [InlineData(Oxide.BaO, 10), InlineData(Oxide.SrO, 5), InlineData(Oxide.TiO2, 3), InlineData(Oxide.Fe2O3, 1), InlineData(Oxide.SO3, 1)]
    public void Fluegels_model_ends_at_the_papers_limits(Oxide oxide, double most)
    {
        Assert.DoesNotContain($"{oxide} is", Reason(ViscosityModel.Fluegel2007, InSilica(oxide, most * 0.9995, GlassComposition.OfMoles)), StringComparison.Ordinal);
        Assert.Contains($"the model ends at {most}", Reason(ViscosityModel.Fluegel2007, InSilica(oxide, most * 1.0005, GlassComposition.OfMoles)), StringComparison.Ordinal);
    }

    [Fact]
    public void Fluegels_model_takes_no_more_silica_than_the_paper()
    {
        Assert.True(IsWithin(ViscosityModel.Fluegel2007, Moles("SiO2", 86.97, Oxide.Na2O, 8, Oxide.CaO, 4)));
        Assert.Contains("SiO2 is 87.03 mol%, the model ends at 87", Reason(ViscosityModel.Fluegel2007, Moles("SiO2", 87.03, Oxide.Na2O, 8, Oxide.CaO, 4)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(Oxide.Al2O3, 5), InlineData(Oxide.Na2O, 18), InlineData(Oxide.K2O, 13), InlineData(Oxide.Li2O, 1.5), InlineData(Oxide.CaO, 13), InlineData(Oxide.MgO, 5)]
    [InlineData(Oxide.BaO, 10), InlineData(Oxide.ZnO, 5), InlineData(Oxide.PbO, 30), InlineData(Oxide.B2O3, 5)]
    public void Lakatos_model_ends_at_our_own_limits(Oxide oxide, double most)
    {
        Assert.DoesNotContain($"{oxide} is", Reason(ViscosityModel.Lakatos1976, InSilica(oxide, most * 0.9995, GlassComposition.OfWeights)), StringComparison.Ordinal);
        Assert.Contains($"the model ends at {most}", Reason(ViscosityModel.Lakatos1976, InSilica(oxide, most * 1.0005, GlassComposition.OfWeights)), StringComparison.Ordinal);
    }

    [Theory, InlineData(55.02, true), InlineData(54.98, false), InlineData(77.97, true), InlineData(78.03, false)]
    public void Lakatos_model_asks_for_a_silicate(double silicaPercent, bool isWithin)
    {
        var rest = 100 - silicaPercent;
        var glass = GlassComposition.OfWeights(new Dictionary<Oxide, double> { [Oxide.SiO2] = silicaPercent, [Oxide.Na2O] = rest * 0.35, [Oxide.CaO] = rest * 0.25, [Oxide.PbO] = rest * 0.4 });
        Assert.Equal(isWithin, IsWithin(ViscosityModel.Lakatos1976, glass));
    }

    [Fact]
    public void An_oxide_that_a_model_does_not_have_is_named()
    {
        var reason = Reason(ViscosityModel.Lakatos1976, InSilica(Oxide.TiO2, 1, GlassComposition.OfWeights));
        Assert.Contains("TiO2 is not in the model", reason, StringComparison.Ordinal);
    }

    static GlassComposition InSilica(Oxide oxide, double percent, Func<IReadOnlyDictionary<Oxide, double>, GlassComposition> of) =>
        of(new Dictionary<Oxide, double> { [Oxide.SiO2] = 100 - percent, [oxide] = percent });

    static GlassComposition Moles(string oxide, double percent, Oxide second, double secondPercent, Oxide third, double thirdPercent) =>
        GlassComposition.OfMoles(new Dictionary<Oxide, double> { [Enum.Parse<Oxide>(oxide)] = percent, [second] = secondPercent, [third] = thirdPercent, [Oxide.K2O] = 100 - percent - secondPercent - thirdPercent });

    static bool IsWithin(ViscosityModel model, GlassComposition glass) => model.Of(glass) is ViscosityAnswer.Known;

    static string Reason(ViscosityModel model, GlassComposition glass) => model.Of(glass) is ViscosityAnswer.OutOfRange(var reason) ? reason : "";
}
