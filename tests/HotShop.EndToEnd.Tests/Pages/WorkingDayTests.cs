using System.Text.Json;
using HotShop.Monitor.Tests.Broker;
using Microsoft.Playwright;
using Xunit;

namespace HotShop.EndToEnd.Tests.Pages;

/// <summary>What people do on the pages while they work.</summary>
[Collection("pages")]
public sealed class WorkingDayTests(Chromium chromium, ShownStudio studio)
{
    public static TheoryData<Screen> Screens => new(Screen.Desk, Screen.Phone);

    [Theory, MemberData(nameof(Screens))]
    public async Task Values_on_the_floor_and_the_set_up_page_change_by_themselves(Screen screen)
    {
        foreach (var (path, values) in new[] { ("/", "#appliances .number"), ("/setup", ".wire .value") })
        {
            await using var visit = await chromium.Open(studio.Address + path, screen);
            await visit.Ready();
            await visit.Until("values => /\\d/.test([...document.querySelectorAll(values)].map(v => v.textContent).join())", values);
            await visit.Page.EvaluateAsync("values => { window.before = [...document.querySelectorAll(values)].map(v => v.textContent).join(); }", values);
            await visit.Until("values => [...document.querySelectorAll(values)].map(v => v.textContent).join() !== window.before", values);
            visit.HasNoFaults();
        }
    }

    [Theory, MemberData(nameof(Screens))]
    public async Task Set_up_says_what_a_couple_is_and_how_far_it_can_be_trusted(Screen screen)
    {
        await using var visit = await chromium.Open(studio.Address + "/setup", screen);
        await visit.Ready();
        await visit.Until("() => /type S · IEC 60584-1 class 2 · true value between [\\d.]+ °C and [\\d.]+ °C, 95 %/.test(document.querySelector('.wire .trust')?.textContent ?? '')", null);
        visit.HasNoFaults();
    }

    [Theory, MemberData(nameof(Screens))]
    public async Task A_gather_is_logged_with_one_tap_and_taken_back_with_another(Screen screen)
    {
        await using var visit = await chromium.Open($"{studio.Address}/pot", screen);
        await visit.Ready();
        var gather = await Logged(visit, () => visit.Page.Locator("button.gather[data-size=medium]").ClickAsync());
        var kept = await Entry(gather.GetProperty("id").GetString()!);
        Assert.Equal(("gather", "medium", 1), (kept.GetProperty("entry").GetString(), kept.GetProperty("size").GetString(), kept.GetProperty("count").GetInt32()));

        var correction = await Logged(visit, () => visit.Page.Locator("#undo").ClickAsync());
        Assert.Equal(("correction", gather.GetProperty("id").GetString()), (correction.GetProperty("entry").GetString(), correction.GetProperty("of").GetString()));
        visit.HasNoFaults();
    }

    [Fact]
    public async Task A_charge_takes_two_taps_and_a_dip_as_well()
    {
        await using var visit = await chromium.Open($"{studio.Address}/pot", Screen.Phone);
        await visit.Ready();
        foreach (var (sheet, field) in new[] { ("charge", "mass"), ("dip", "glassDepth") })
        {
            await visit.Page.Locator($"button[data-sheet={sheet}]").ClickAsync();
            var entry = await Logged(visit, () => visit.Page.Locator("#sheet .offers button").First.ClickAsync());
            Assert.Equal(sheet, entry.GetProperty("entry").GetString());
            Assert.True((await Entry(entry.GetProperty("id").GetString()!)).GetProperty(field).GetDouble() > 0);
        }
        visit.HasNoFaults();
    }

    [Fact]
    public async Task Without_a_line_the_pot_page_keeps_a_gather_says_so_and_hands_it_in_once_when_the_line_is_back()
    {
        await using var visit = await chromium.Open($"{studio.Address}/pot", Screen.Phone);
        await visit.Ready();
        visit.IsExpected = true;
        await visit.Context.SetOfflineAsync(true);
        await visit.Page.Locator("button.gather[data-size=large]").ClickAsync();
        await visit.Until("() => document.getElementById('taken-more').textContent.includes('kept here')");
        var id = await visit.Page.EvaluateAsync<string>("JSON.parse(localStorage.getItem('hotshop.entries'))[0].entry.id");
        Assert.DoesNotContain(await Entries(), e => e.GetProperty("id").GetString() == id);

        await visit.Context.SetOfflineAsync(false);
        await visit.Until("() => JSON.parse(localStorage.getItem('hotshop.entries')).length === 0");
        Assert.Single(await Entries(), e => e.GetProperty("id").GetString() == id);
    }

    /// <summary>The entry that an act sends, once the service has answered that it is new.</summary>
    static async Task<JsonElement> Logged(Visit visit, Func<Task> act)
    {
        var answer = await visit.Page.RunAndWaitForResponseAsync(act, r => r.Url.EndsWith("/api/logbook", StringComparison.Ordinal) && r.Request.Method == "POST");
        Assert.True(answer.Status == 201, await answer.TextAsync());
        return (await answer.JsonAsync())!.Value;
    }

    async Task<JsonElement> Entry(string id) => (await Entries()).Single(e => e.GetProperty("id").GetString() == id);

    async Task<IReadOnlyList<JsonElement>> Entries() => [.. (await studio.Ask("/api/logbook?appliance=furnace-1")).EnumerateArray()];
}
