using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Web.Pages.Night;
using HotShop.Monitor.Wire;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Web.Pages;

/// <summary>
/// The page behind the link of a message. Showing it changes nothing; the two buttons act. Works without script and without sign-in:
/// the signed token in the address is the right to answer for this one occurrence.
/// </summary>
[IgnoreAntiforgeryToken]
internal sealed class NightModel(StudioPlan plan, INightDesk desk, IAlarmDesk alarms, IReadingHistory history, TimeProvider clock) : PageModel
{
    const int MostPoints = 3000;
    static readonly Duration Drawn = Duration.FromMinutes(85);

    [BindProperty(SupportsGet = true)]
    public string Occurrence { get; set; } = "";

    [BindProperty(SupportsGet = true, Name = "t")]
    public string? Token { get; set; }

    /// <summary>What the last button did; it only chooses the words.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Done { get; set; }

    public NightView? View { get; private set; }
    public Instant Now { get; private set; }
    public ChannelPlan? Channel { get; private set; }
    public NightPoint? Last { get; private set; }
    public string Strip { get; private set; } = "";
    public StudioConfiguration Studio => plan.Configuration;

    public string Clock(Instant at) => NightStrip.Clock(at, plan.Zone);

    public IActionResult OnGet()
    {
        Load();
        if (View is null) Response.StatusCode = StatusCodes.Status404NotFound;
        return Page();
    }

    public async Task<IActionResult> OnPostTakeAsync(CancellationToken stop)
    {
        if (Token is null && User.Identity is { IsAuthenticated: true } && desk.LookSignedIn(Occurrence) is not null)
        {
            await alarms.Acknowledge(Occurrence, User.Identity.Name ?? "somebody signed in", stop);
            return Again("taken");
        }
        return Again((await desk.Take(Occurrence, Token, stop)).Outcome switch
        {
            NightOutcome.Taken => "taken",
            NightOutcome.AlreadyTaken => "theirs",
            NightOutcome.Ended => "ended",
            _ => null,
        });
    }

    public async Task<IActionResult> OnPostWakeAsync(CancellationToken stop) =>
        Again((await desk.WakeNext(Occurrence, Token, stop)).Outcome switch
        {
            NightOutcome.Woken => "woken",
            NightOutcome.EverybodyCalledAgain => "all",
            NightOutcome.Ended => "ended",
            _ => null,
        });

    /// <summary>Back to the page by GET, so that reloading it never acts again.</summary>
    RedirectToPageResult Again(string? done) => RedirectToPage("/Night", new { occurrence = Occurrence, t = Token, done });

    void Load()
    {
        Now = clock.GetUtcNow().ToInstant();
        View = Token is null && User.Identity is { IsAuthenticated: true } ? desk.LookSignedIn(Occurrence) : desk.Look(Occurrence, Token);
        if (View is not { Occurrence: var alarm }) return;
        Channel = NightValues.Channel(plan.Appliance(alarm.Appliance), alarm.Channel);
        if (Channel is not { } channel) return;
        List<NightPoint> points = [.. history.Raw(channel, Now - Drawn, Now + Duration.FromSeconds(1), MostPoints).Select(s => new NightPoint(s.At, s.Value))];
        Last = points.Count > 0 ? points[^1] : null;
        var isOwn = (alarm.Channel == channel.Name || alarm.Channel == channel.Id) && alarm.Unit == channel.Quantity.CanonicalUnit();
        Strip = NightStrip.Svg(new NightPicture(points, channel.LongestGap, isOwn ? alarm.Limit : null, alarm.Since, Now, plan.Zone,
            channel.Quantity is Quantity.Temperature, value => NightValues.Words(channel.Quantity, value)));
    }
}
