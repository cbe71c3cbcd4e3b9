using HotShop.Monitor.Pot;
using HotShop.Monitor.Tests.Support;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Pot;

/// <summary>What stays of a charge as glass.</summary>
public sealed class ChargeYieldTests
{
    static async Task<double> Glass(OpenStudio studio, string charge)
    {
        await studio.Send("furnace-1/log", charge);
        Assert.Empty(studio.Refused);
        return studio.The<PotBook>().GlassMelted("furnace-1", OpenStudio.Start - Hours(1), studio.Now + Hours(1)).Value;
    }

    [Fact]
    public async Task Batch_leaves_what_its_bag_says_else_what_the_configuration_says_else_the_usual_85_percent()
    {
        await using var usual = OpenStudio.Open();
        Assert.Equal(17, await Glass(usual, """{"entry":"charge","material":"batch","mass":20,"unit":"kg"}"""), 1e-9);
        await using var configured = OpenStudio.Open(SomeStudio.With("furnace-1", a => a with { Pot = a.Pot! with { GlassYields = new Dictionary<string, double> { ["batch"] = 0.82 } } }));
        Assert.Equal(16.4, await Glass(configured, """{"entry":"charge","material":"batch","mass":20,"unit":"kg"}"""), 1e-9);
        Assert.Equal(16.4 + 18, await Glass(configured, """{"entry":"charge","material":"batch","mass":20,"unit":"kg","yield":0.9}"""), 1e-9);
    }

    [Theory]
    [InlineData("85")]
    [InlineData("0")]
    [InlineData("\"0.85\"")]
    public async Task A_yield_that_is_no_share_is_refused(string yield)
    {
        await using var studio = OpenStudio.Open();
        await studio.Send("furnace-1/log", $$"""{"entry":"charge","material":"batch","mass":20,"unit":"kg","yield":{{yield}}}""");
        Assert.Contains("yield", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }
}
