using HotShop.Monitor.Sums;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Sums;

/// <summary>The page of sums over HTTP: it shows what the interface answers.</summary>
public class SumsPageTests(SumsService sums) : IClassFixture<SumsService>
{
    [Fact]
    public async Task The_list_leads_to_every_sum()
    {
        var (status, _, text) = await sums.Page("");
        Assert.Equal(200, status);
        Assert.All(sums.Service.The<SumBook>().All, sum =>
        {
            Assert.Contains($"href=\"/sums/{sum.Id}\"", text, StringComparison.Ordinal);
            Assert.Contains(sum.Title, text, StringComparison.Ordinal);
        });
    }

    [Theory, MemberData(nameof(SumTests.All), MemberType = typeof(SumTests))]
    public async Task A_sum_shows_its_example_with_interval_method_source_and_range(string id)
    {
        var sum = sums.Service.The<SumBook>().Find(id)!;
        var (status, _, text) = await sums.Page("/" + id);
        Assert.Equal(200, status);
        Assert.All(["An example", "95 times in 100 between", sum.Title, sum.Method, sum.Source, sum.Range, sum.Caution ?? ""], part => Assert.Contains(part, text, StringComparison.Ordinal));
        Assert.All(sum.Fields, field => Assert.Contains($"name=\"{field.Name}\"", text, StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_page_and_the_interface_work_one_sum()
    {
        const string address = "weight?shape=ball&diameter=8.0&kind=soft-studio-soda-lime";
        Assert.Equal(0.670, await sums.Result(address, "massKg"), 0.0005);
        var (_, _, text) = await sums.Page("/" + address);
        Assert.Contains("It comes to", text, StringComparison.Ordinal);
        Assert.Contains("<b>0.670\u00a0kg</b>", text, StringComparison.Ordinal);
        Assert.Contains("<small>1.478\u00a0lb</small>", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_decimal_comma_is_read_and_written_where_people_write_one()
    {
        await using var german = await TestService.Start();
        async Task<string> Page(string address)
        {
            using var answer = await german.Http.GetAsync(new Uri("/sums/" + address, UriKind.Relative), TestContext.Current.CancellationToken);
            return System.Net.WebUtility.HtmlDecode(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken));
        }

        Assert.Contains("0,509\u00a0kg", await Page("weight?diameter=7,3"), StringComparison.Ordinal);
        Assert.Contains("0,509\u00a0kg", await Page("weight?diameter=7.3"), StringComparison.Ordinal);
        Assert.Contains("can be read in two ways", await Page("charge?mass=1.150"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_studio_of_us_habits_reads_its_units_first()
    {
        await using var us = await TestService.Start(SomeStudio.Configuration with { Units = "us", Zone = "America/New_York", Currency = "USD" });
        var text = System.Net.WebUtility.HtmlDecode(await us.Http.GetStringAsync(new Uri("/sums/weight", UriKind.Relative), TestContext.Current.CancellationToken));
        Assert.Contains("value=\"2.874\"", text, StringComparison.Ordinal);
        Assert.Contains("<option value=\"in\" selected=\"selected\">in</option>", text, StringComparison.Ordinal);
        Assert.Matches(@"<b>1\.12\d*\u00a0lb</b>", text);
    }

    [Theory]
    [InlineData("/weight?diameter=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E")]
    [InlineData("/weight?shape=%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E")]
    [InlineData("/weight?diameter=7&diameterUnit=%22%3E%3Cimg%20src%3Dx%20onerror%3Dalert(1)%3E")]
    [InlineData("/weight?%3Cimg%20src%3Dx%3E=1")]
    [InlineData("/%3Cimg%20src%3Dx%3E")]
    public async Task Hostile_words_in_the_address_stay_words(string address)
    {
        var (status, raw, _) = await sums.Page(address);
        Assert.InRange(status, 200, 499);
        Assert.DoesNotContain("<img", raw, StringComparison.OrdinalIgnoreCase);
    }

    [Theory]
    [InlineData("7.3", ".", 7.3, 0.05), InlineData("7,3", ".", 7.3, 0.05), InlineData("1150", ".", 1150, 0.5), InlineData(" -0.250 ", ".", -0.25, 0.0005), InlineData("−5", ".", -5, 0.5)]
    [InlineData("1 150", ",", 1150, 0.5), InlineData("0,250", ".", 0.25, 0.0005), InlineData("10,757", ",", 10.757, 0.0005), InlineData("1'150.5", ".", 1150.5, 0.05)]
    public void A_number_is_good_to_half_its_last_digit(string typed, string mark, double value, double halfStep)
    {
        var (number, problem) = SumNumber.Read(typed, mark);
        Assert.Null(problem);
        Assert.Equal(value, number.Value, 1e-12);
        Assert.Equal(halfStep, number.HalfStep, 1e-12);
    }

    [Fact]
    public void Every_unit_goes_to_the_canonical_one_and_back() => Assert.All(
        new[] { Measure.Temperature, Measure.Mass, Measure.Length, Measure.GasVolume, Measure.Energy, Measure.Power, Measure.Area, Measure.Flux, Measure.Conductivity }.SelectMany(m => m.Units),
        unit => Assert.Equal(12.5, unit.Of(unit.ToCanonical(12.5)), 1e-12));

    // 1 W/(m K) is 6.9335 Btu in/(h ft² °F), 1 W/m² 0.316998 Btu/(h ft²): NIST SP 811.
    [Fact]
    public void Units_of_american_data_sheets_are_known()
    {
        Assert.Equal(6.9335, Measure.Conductivity.Find("Btu.in")!.Of(1), 0.0001);
        Assert.Equal(0.316998, Measure.Flux.Find("Btu/h/ft2")!.Of(1), 0.000001);
        Assert.Equal(2102, Measure.Temperature.Find("F")!.Of(1150), 1e-9);
    }
}
