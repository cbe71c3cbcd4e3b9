using HotShop.Checks;
using Xunit;

namespace HotShop.Physics.Tests;

public class ChecksTests
{
    public static TheoryData<string> Topics => [.. Topic.All.Select(t => t.Name)];

    [Theory, MemberData(nameof(Topics))]
    public void Every_published_value_of_a_topic_is_met(string topic)
    {
        var checks = Topic.All.Single(t => t.Name == topic).Checks;
        Assert.All(checks, check => Assert.True(check.Holds, FormattableString.Invariant(
            $"{check.What}: {check.Source} says {check.Published} {check.Unit}, ours {check.Ours():R}, allowed ±{check.Tolerance:R}")));
    }

    [Fact]
    public void No_two_checks_of_a_topic_are_the_same_case() =>
        Assert.All(Topic.All, topic => Assert.Empty(topic.Checks.GroupBy(c => (c.What, c.Source)).Where(g => g.Count() > 1).Select(g => g.Key)));
}
