using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>What must hold on every page.</summary>
[Collection("pages")]
public sealed class EveryPageTests(Chromium chromium, ShownStudio studio)
{
    public static TheoryData<string> Pages => new("/", "/morning", "/pot", "/meters", "/alarms", "/health", "/setup", "/money", "/sums", "/sums/weight", "/sums/wall", "/signin", "/first-run", "/pair");

    [Theory, MemberData(nameof(Pages))]
    public async Task Axe_finds_nothing_serious_in_light_or_dark_on_desk_or_phone(string path)
    {
        List<string> found = [];
        foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
            foreach (var screen in new[] { Screen.Desk, Screen.Phone })
            {
                await using var visit = await chromium.Open(studio.Address + path, screen, scheme);
                await visit.Ready();
                found.AddRange(Serious(await visit.Page.RunAxe()).Select(v => $"{scheme} {screen.Name}: {v}"));
                visit.HasNoFaults();
            }
        Assert.Empty(found);
    }

    [Theory, MemberData(nameof(Pages))]
    public async Task Nothing_scrolls_sideways_on_the_narrowest_phone(string path)
    {
        await using var visit = await chromium.Open(studio.Address + path, Screen.Narrow);
        await visit.Ready();
        Assert.False(await visit.ScrollsSideways());
    }

    // The pages' own bound; a chart script, where there will be one, comes later and only there.
    [Theory, MemberData(nameof(Pages))]
    public async Task The_first_view_on_a_phone_weighs_less_than_300_kB_with_a_day_behind_it_and_asks_no_other_host(string path)
    {
        await studio.HasRun(TimeSpan.FromHours(14));
        await using var visit = await chromium.Open(studio.Address + path, Screen.Phone);
        await visit.Ready();
        await visit.Page.WaitForLoadStateAsync(LoadState.Load);
        var parts = await visit.Weights();
        Assert.True(parts.Sum(p => p.Bytes) < 300_000, string.Join('\n', parts.OrderByDescending(p => p.Bytes).Take(15)));
        visit.HasNoFaults();
    }

    internal static IEnumerable<string> Serious(AxeResult result) => result.Violations.Where(v => v.Impact is "serious" or "critical")
        .Select(v => $"{v.Id} ({v.Impact}): {v.Help}; {string.Join(" | ", v.Nodes.Take(3).Select(n => n.Html))}");
}
