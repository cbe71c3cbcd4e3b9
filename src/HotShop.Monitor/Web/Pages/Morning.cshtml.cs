using System.Text.Json;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Handover.Words;
using HotShop.Monitor.Web.Pages.Dawn;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Mvc.RazorPages;
using Microsoft.Extensions.Options;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;

namespace HotShop.Monitor.Web.Pages;

/// <summary>What the night handed over. Readable without scripts; showing it changes nothing, its buttons post.</summary>
[IgnoreAntiforgeryToken]   // The gate before every page checks where a changing call comes from.
internal sealed class MorningModel(
    StudioPlan plan, RunChoices run, HandoverBook book, HandoverWords words, NightCalendar calendar, Takeover takeover, IAlarmDesk alarms, TimeProvider clock, IOptions<Microsoft.AspNetCore.Http.Json.JsonOptions> json) : PageModel
{
    /// <summary>A morning of the past, YYYY-MM-DD; left out: today's.</summary>
    [BindProperty(SupportsGet = true)]
    public string? Day { get; set; }

    public Handover.Morning Morning { get; private set; } = null!;
    public IReadOnlyList<DawnStory> Stories { get; private set; } = [];
    public string? Problem { get; private set; }
    public MorningTimes Times => words.Times(Morning);
    public HandoverWords Words => words;
    public DateTimeZone Zone => plan.Zone;
    public string DayText => LocalDatePattern.Iso.Format(Morning.Night.Morning);
    public bool IsToday { get; private set; }

    /// <summary>A paired screen has a name of its own, which is nobody's.</summary>
    public string? YourName => User.IsInRole("Owner") && User.Identity?.Name is { } name and not ("Owner" or "Demo") ? name : null;

    public string StudioJson => JsonSerializer.Serialize(new { studio = StudioEndpoints.Studio(plan, run, Morning.Now) }, json.Value.SerializerOptions);

    public LocalDate Before => Morning.Night.Morning.PlusDays(-1);
    public LocalDate After => Morning.Night.Morning.PlusDays(1);

    public string Strip(bool isAcross) => isAcross ? DawnStrip.Across(Morning, Stories, plan.Zone) : DawnStrip.Down(Morning, Stories, plan.Zone);

    /// <summary>Usual causes to tap, by the kind of trouble. Common practice.</summary>
    public static IReadOnlyList<string> UsualCauses(string kind) => kind switch
    {
        AlarmKinds.FlameFailure or AlarmKinds.LockOut or AlarmKinds.FallingWithGas => ["Draught", "Dirty flame sensor", "Gas pressure", "Power dip"],
        AlarmKinds.Silent => ["Network", "Power of the sensor", "Couple broken"],
        AlarmKinds.AnnealerDrift => ["Door left open", "Element or fuse", "Curve changed"],
        AlarmKinds.Overheat => ["Controller setting", "Couple drifted", "Charging"],
        AlarmKinds.MainsLost => ["Street was dark", "Fuse in the shop"],
        AlarmKinds.CarbonMonoxide or AlarmKinds.CarbonMonoxideWarning or AlarmKinds.CombustibleGas or AlarmKinds.CombustibleGasWarning => ["Burner", "Flue or hood", "Leak, mended"],
        _ => ["Network", "Power"],
    };

    public IActionResult OnGet()
    {
        Load();
        return Page();
    }

    public async Task<IActionResult> OnPostTakeAsync(string? who, CancellationToken stop)
    {
        Load();
        return await takeover.Take(Morning.Night.Morning, who, clock.GetCurrentInstant(), stop) is { } problem ? Again(problem) : Back();
    }

    public async Task<IActionResult> OnPostCauseAsync(string? occurrence, string? text, string? usual, string? who, CancellationToken stop)
    {
        Load();
        if (occurrence is null || alarms.Find(occurrence) is not { } trouble) return Again("that trouble is not known any more; look at the alarms page");
        return await takeover.Explain(trouble.Appliance, occurrence, string.IsNullOrWhiteSpace(text) ? usual : text, who, clock.GetCurrentInstant(), stop) is { } problem ? Again(problem) : Back();
    }

    /// <summary>Back by GET, so that reloading never acts again.</summary>
    RedirectToPageResult Back() => RedirectToPage("/Morning", IsToday ? null : new { day = DayText });

    PageResult Again(string problem)
    {
        Load();
        Problem = char.ToUpperInvariant(problem[0]) + problem[1..] + ".";
        return Page();
    }

    void Load()
    {
        var now = clock.GetCurrentInstant();
        var today = calendar.Of(now).Morning;
        var day = Day is not null && LocalDatePattern.Iso.Parse(Day) is { Success: true } parsed && parsed.Value <= today ? parsed.Value : today;
        IsToday = day == today;
        Morning = book.Of(IsToday ? now : day.At(new LocalTime(12, 0)).InZoneLeniently(plan.Zone).ToInstant());
        Stories = DawnStory.Of(Morning, plan, words.Times(Morning));
    }
}
