using HotShop.Checks;
using HotShop.Physics.Thermometry;
using Xunit;

namespace HotShop.Physics.Tests;

public class ChecksDocumentTests
{
    [Fact]
    public void The_page_of_published_values_is_what_would_be_written()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "HotShop.Monitor.sln"))) folder = Path.GetDirectoryName(folder)!;
        var (kept, now) = (File.ReadAllText(Path.Combine(folder, ChecksTable.Path)).Split('\n'), ChecksTable.Markdown(Topic.All).Split('\n'));
        var first = Enumerable.Range(0, Math.Max(kept.Length, now.Length)).FirstOrDefault(i => kept.ElementAtOrDefault(i) != now.ElementAtOrDefault(i), -1);
        Assert.True(first < 0, $"{ChecksTable.Path}, line {first + 1}: kept\n{kept.ElementAtOrDefault(first)}\nnow\n{now.ElementAtOrDefault(first)}\nWrite it anew: {ChecksTable.Command}");
    }

    [Fact]
    public void There_are_four_hundred_checks_and_at_most_half_are_of_thermometry()
    {
        var all = Topic.All.Sum(t => t.Checks.Count);
        Assert.True(all >= 400, $"{all} checks");
        Assert.True(2 * Topic.All.Single(t => t.Name == "Thermometry").Checks.Count <= all, "more than half of the checks are of thermometry");
        Assert.All(Topic.All, topic => Assert.True(topic.Checks.Count >= 15, $"{topic.Name}: {topic.Checks.Count} checks"));
    }

    [Fact]
    public void Each_type_of_couple_is_held_to_25_voltages()
    {
        var voltages = Topic.All.Single(t => t.Name == "Thermometry").Checks.Where(c => c is { Unit: "mV", Standing: not Standing.Memory }).ToList();
        Assert.All(Enum.GetValues<ThermocoupleType>(), type =>
        {
            var points = voltages.Count(c => c.What.StartsWith($"type {type} at ", StringComparison.Ordinal));
            Assert.True(points >= 25, $"type {type}: {points} voltages");
        });
    }

    [Theory]
    [InlineData(12.20863, 0.0005, "12.2086"), InlineData(-0.00004, 0.0005, "0.0000"), InlineData(332.04, 1, "332.0"), InlineData(20.25, 0.5, "20.3"), InlineData(2116987.43, 50, "2116987")]
    [InlineData(5.670374419e-8, 5e-18, "5.6703744190e-8"), InlineData(1.5e-9, 1e-11, "1.500e-9"), InlineData(0, 0.05, "0.00")]
    public void Ours_is_printed_to_one_digit_more_than_the_tolerance_can_tell_apart(double value, double tolerance, string printed) =>
        Assert.Equal(printed, ChecksTable.Rounded(value, tolerance));
}
