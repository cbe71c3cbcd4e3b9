using FsCheck.Xunit;
using HotShop.Physics.Glass;
using Xunit;

namespace HotShop.Physics.Tests.Glass;

public class BatchTests
{
    public static TheoryData<string> Materials => [.. RawMaterial.All.Select(m => m.Name)];

    [Theory, MemberData(nameof(Materials))]
    public void What_stays_and_what_leaves_are_the_whole_material(string name)
    {
        var material = RawMaterial.Named(name)!;
        Assert.Equal(1, material.Yield + material.GasesPerKilogram.Values.Sum(), 1e-12);
    }

    [Property]
    public bool Glass_and_gases_are_the_whole_batch(byte[] kilograms)
    {
        var parts = RawMaterial.All.Zip(kilograms).ToDictionary(p => p.First, p => (double)p.Second);
        if (parts.Values.Sum() == 0) return true;
        BatchRecipe batch = new(parts);
        return Math.Abs(batch.GlassKilograms + batch.GasKilograms.Values.Sum() - batch.Kilograms) < 1e-9 * batch.Kilograms
            && batch.Yield is > 0.3 and <= 1 + 1e-12;
    }

    [Fact]
    public void Carbon_dioxide_is_that_of_the_carbonates_alone()
    {
        BatchRecipe batch = new(new Dictionary<RawMaterial, double> { [RawMaterial.Named("Soda Ash")!] = 10, [RawMaterial.Named("sodium nitrate")!] = 10 });
        // 44.009 of 105.988 g/mol.
        Assert.Equal(4.1523, batch.CarbonDioxideKilograms, 0.0002);
        Assert.Equal(0, new BatchRecipe(new Dictionary<RawMaterial, double> { [RawMaterial.Named("sand")!] = 1 }).CarbonDioxideKilograms);
    }

    [Fact]
    public void A_batch_of_nothing_is_refused_and_an_unknown_material_is_not_found()
    {
        Assert.Throws<ArgumentException>(() => new BatchRecipe(new Dictionary<RawMaterial, double>()));
        Assert.Null(RawMaterial.Named("porridge"));
    }
}
