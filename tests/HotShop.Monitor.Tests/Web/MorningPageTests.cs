using System.Net;
using System.Text.Json;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Tests.Support;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Web;

/// <summary>The morning page and its interface after a trouble, over HTTP.</summary>
public sealed class MorningPageTests : IAsyncLifetime
{
    TestService service = null!;
    string occurrence = "";

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask InitializeAsync()
    {
        service = await TestService.Start();
        var six = service.Now - Hours(2);
        await service.Send("furnace-1/crown", Steady(1150, Seconds(10), six, six + Minutes(5)));
        await service.Send("furnace-1/crown", Steady(1300, Seconds(10), service.Now - Minutes(10), service.Now));
        occurrence = Assert.Single(service.The<IAlarmDesk>().Current, a => a.Appliance == "furnace-1" && a.Kind == "overheat").Id;
        service.Clock.Advance(TimeSpan.FromMinutes(3));
        await service.Send("furnace-1/crown", Steady(1150, Seconds(10), service.Now - Minutes(2.5), service.Now));
    }

    public ValueTask DisposeAsync() => service.DisposeAsync();

    Task<string> Page() => service.Http.GetStringAsync(new Uri("/morning", UriKind.Relative), Stop);

    async Task<HttpResponseMessage> Post(string handler, params (string Key, string Value)[] fields)
    {
        using var content = new FormUrlEncodedContent(fields.Select(f => KeyValuePair.Create(f.Key, f.Value)));
        return await service.Http.PostAsync(new Uri($"/morning?handler={handler}", UriKind.Relative), content, Stop);
    }

    [Fact]
    public async Task A_tap_on_a_usual_cause_answers_the_question_and_is_in_the_log()
    {
        const string question = "Furnace 1 crown is 1300 °C (2372 °F), limit 1290 °C (2354 °F). Why?";
        Assert.Contains(question, WebUtility.HtmlDecode(await Page()), StringComparison.Ordinal);
        (await Post("Cause", ("occurrence", occurrence), ("who", "Ana"), ("text", ""), ("usual", "Charging"))).EnsureSuccessStatusCode();
        Assert.DoesNotContain(question, WebUtility.HtmlDecode(await Page()), StringComparison.Ordinal);
        var note = Assert.Single((await service.Get("/api/logbook")).EnumerateArray(), e => e.GetProperty("entry").GetString() == "note");
        Assert.Equal(("quillmere/furnace-1", "Ana", "Charging", occurrence), (note.GetProperty("appliance").GetString(), note.GetProperty("who").GetString(), note.GetProperty("text").GetString(), note.GetProperty("occurrence").GetString()));
    }

    [Fact]
    public async Task A_name_that_is_missing_is_said_and_nothing_is_logged()
    {
        using var answer = await Post("Take", ("who", " "));
        Assert.Contains("Your name must be 1 to 60 characters.", await answer.Content.ReadAsStringAsync(Stop), StringComparison.Ordinal);
        Assert.Empty((await service.Get("/api/logbook")).EnumerateArray());
    }

    [Fact]
    public async Task A_hostile_name_stays_a_name()
    {
        (await Post("Take", ("who", "<img src=x onerror=alert(1)>"))).EnsureSuccessStatusCode();
        var page = await Page();
        Assert.DoesNotContain("<img", page, StringComparison.Ordinal);
        Assert.Contains("&lt;img src=x onerror=alert(1)&gt; took over at", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Looking_changes_nothing()
    {
        await Page();
        await service.Get("/api/handover");
        Assert.Empty((await service.Get("/api/logbook")).EnumerateArray());
    }

    [Fact]
    public async Task The_interface_gives_facts_with_units_and_the_words_of_the_page()
    {
        var told = await service.Get("/api/handover");
        Assert.Contains(told.GetProperty("headline").GetString()!, WebUtility.HtmlDecode(await Page()), StringComparison.Ordinal);
        var trouble = Assert.Single(told.GetProperty("troubles").EnumerateArray(), t => t.GetProperty("occurrence").GetString() == occurrence);
        Assert.True(trouble.GetProperty("wantsCause").GetBoolean());
        var furnace = told.GetProperty("appliances").EnumerateArray().Single(a => a.GetProperty("appliance").GetString() == "quillmere/furnace-1");
        Assert.Equal(1300, furnace.GetProperty("high").GetProperty("celsius").GetDouble(), 0.01);
        Assert.Equal("2026-03-02", told.GetProperty("day").GetString());
    }

    [Fact]
    public async Task Taking_over_by_the_interface_names_somebody_and_a_cause_names_a_trouble()
    {
        var (status, _, problem) = await service.Wrong(HttpMethod.Post, "/api/handover/take", "{}");
        Assert.Equal((400, "'who': your name must be 1 to 60 characters"), (status, problem.GetProperty("detail").GetString()));
        (status, _, _) = await service.Wrong(HttpMethod.Post, "/api/handover/cause", """{"occurrence":"nothing","text":"x","who":"Ana"}""");
        Assert.Equal(404, status);
        using var body = new StringContent("""{"who":"Ana"}""", System.Text.Encoding.UTF8, "application/json");
        using var answer = await service.Http.PostAsync(new Uri("/api/handover/take", UriKind.Relative), body, Stop);
        var told = JsonSerializer.Deserialize<JsonElement>(await answer.Content.ReadAsStringAsync(Stop));
        Assert.Equal("Ana", told.GetProperty("takenOver").GetProperty("who").GetString());
    }
}
