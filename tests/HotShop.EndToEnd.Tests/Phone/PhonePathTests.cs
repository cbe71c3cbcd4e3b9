using System.Net;
using System.Text.RegularExpressions;
using HotShop.Monitor.Alarms;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>From an MQTT message to the phones: a mail server and a push server on this machine.</summary>
public sealed partial class PhonePathTests
{
    const string First = NightPlan.First, Second = NightPlan.Second;

    static CancellationToken Stop => TestContext.Current.CancellationToken;

    // Limits and delays are the defaults of AlarmDefaults: 1290 °C for 60 s, no flame for 90 s, 15 K off for half an hour.
    [Theory]
    [InlineData("overheat", "furnace-1/crown", 1300, 1150, 2)]
    [InlineData("flame failure", "furnace-1/flame", 0, 1, 3)]
    [InlineData("annealer drift", "annealer-1/chamber", 455, 480, 31)]
    public Task An_alarm_reaches_mail_and_push_once_then_again_after_the_repeat_time_then_the_next_person_and_its_end_is_told_once(
        string kind, string channel, double wrong, double right, int minutesToRing) => NightStudio.Play(async studio =>
        {
            await studio.Pass(3);
            Assert.Empty(await studio.Heard());

            studio.Sensors[channel] = wrong;
            await studio.Pass(minutesToRing - 1);
            Assert.Empty(await studio.Heard());
            await studio.Pass(1);
            var rung = await studio.Heard();
            Assert.Equal([$"{First} mail call #1", $"{First} push call #1"], rung.Select(h => $"{h.Phone} {h.Way} {h.Kind} #{h.Round}"));
            Assert.All(rung, h => Assert.Contains(kind, h.Title, StringComparison.OrdinalIgnoreCase));

            await studio.Pass(4);
            Assert.Empty(await studio.Heard());
            await studio.Pass(1);
            Assert.Equal([$"{First} mail call #2", $"{First} push call #2"], await studio.HeardInShort());

            await studio.Pass(5);
            Assert.Equal([$"{First} mail call #3", $"{First} push call #3", $"{Second} mail call #3", $"{Second} push call #3"], await studio.HeardInShort());

            studio.Sensors[channel] = right;
            await studio.Pass(8);   // the longest off-delay is 5 minutes; a repeat may fall into it
            var ended = (await studio.Heard()).Where(h => h.Kind != "call").Select(h => $"{h.Phone} {h.Way} {h.Kind}");
            Assert.Equal([$"{First} mail closing", $"{First} push closing", $"{Second} mail closing", $"{Second} push closing"], ended);
            await studio.Pass(20);
            Assert.Empty(await studio.Heard());
        });

    [Fact]
    public Task Looking_at_the_link_changes_nothing_and_its_button_stops_the_calls() => NightStudio.Play(async studio =>
    {
        studio.Sensors["furnace-1/crown"] = 1300;
        await studio.Pass(2);
        var call = (await studio.Heard()).Single(h => h.Way == "push");

        for (var i = 0; i < 3; i++)
        {
            var page = await studio.Browser.GetAsync(call.Link, Stop);
            Assert.Equal(HttpStatusCode.OK, page.StatusCode);
        }
        Assert.Equal(AlarmState.Unacknowledged, studio.Alarms.Find(call.Occurrence!)!.State);
        await studio.Pass(5);
        Assert.Equal([$"{First} mail call #2", $"{First} push call #2"], await studio.HeardInShort());

        var form = TakeForm().Match(await studio.Browser.GetStringAsync(call.Link, Stop));
        Assert.True(form.Success, "the night page has a form that takes the alarm");
        var action = new Uri(new Uri(call.Link!), WebUtility.HtmlDecode(form.Groups[1].Value));
        using var taken = await studio.Browser.PostAsync(action, new FormUrlEncodedContent([]), Stop);
        Assert.Equal(HttpStatusCode.Redirect, taken.StatusCode);
        Assert.Equal((AlarmState.Acknowledged, "night phone 1"), (studio.Alarms.Find(call.Occurrence!)!.State, studio.Alarms.Find(call.Occurrence!)!.AcknowledgedBy));
        await studio.Pass(30);
        Assert.Empty(await studio.Heard());

        studio.Sensors["furnace-1/crown"] = 1150;
        await studio.Pass(3);
        Assert.Equal([$"{First} mail closing #4", $"{First} push closing #4"], await studio.HeardInShort());
    });

    [Fact]
    public Task A_link_with_one_letter_changed_opens_nothing_and_stops_nothing() => NightStudio.Play(async studio =>
    {
        studio.Sensors["furnace-1/crown"] = 1300;
        await studio.Pass(2);
        var call = (await studio.Heard()).Single(h => h.Way == "push");
        var forged = call.Link![..^2] + (call.Link[^2] == 'A' ? 'B' : 'A') + call.Link[^1];
        using var page = await studio.Browser.GetAsync(forged, Stop);
        Assert.Equal(HttpStatusCode.NotFound, page.StatusCode);
        using var posted = await studio.Browser.PostAsync(forged + "&handler=Take", new FormUrlEncodedContent([]), Stop);
        Assert.Equal(AlarmState.Unacknowledged, studio.Alarms.Find(call.Occurrence!)!.State);
        await studio.Pass(5);
        Assert.Equal([$"{First} mail call #2", $"{First} push call #2"], await studio.HeardInShort());
    });

    [GeneratedRegex("<form method=\"post\" action=\"([^\"]*handler=Take[^\"]*)\"")]
    private static partial Regex TakeForm();
}
