using HotShop.Monitor.Configuration;
using HotShop.Monitor.Notifications.Mail;
using NodaTime;
using NodaTime.Extensions;
using NodaTime.Text;
using Quartz;

namespace HotShop.Monitor.Handover;

/// <summary>Mails the handover at its hour, once to each person and morning. Looked at every minute; whether it is due and who has it stands in the calendar and in the store, so a restart or a busy minute changes nothing.</summary>
sealed partial class HandoverPost(StudioPlan plan, HandoverBook book, HandoverWords words, NightCalendar calendar, LetterPost post, TimeProvider clock, ILogger<HandoverPost> log)
{
    /// <summary>A handover that comes later than this tells nobody anything: it is skipped, and the page says so.</summary>
    public static readonly Duration LatestAfter = Duration.FromHours(3);

    /// <summary>A timer may wake a moment too soon.</summary>
    static readonly Duration timerTolerance = Duration.FromSeconds(2);

    static readonly Duration longestBackOff = Duration.FromMinutes(15);

    public static string KeyOf(LocalDate morning) => $"handover/{LocalDatePattern.Iso.Format(morning)}";

    /// <summary>Sends what is due and not sent yet.</summary>
    public async Task Look(CancellationToken stop)
    {
        var people = plan.Configuration.Handover.MailTo;
        var now = clock.GetUtcNow().ToInstant();
        if (people.Count == 0 || calendar.LastDue(now + timerTolerance) is not { } due) return;
        var key = KeyOf(due.Day);
        var missing = post.Missing(key, people);
        if (missing.Count == 0) return;
        if (now - due.At >= LatestAfter)
        {
            Skipped(key, (now - due.At).ToTimeSpan());
            await post.Skip(key, missing, "the service could not send it within three hours of its time", stop);
        }
        else if (!Waits(key, now)) await post.Deliver(key, missing, () => words.Letter(key, book.Of(Instant.Max(now, due.At))), stop);
    }

    /// <summary>A mail server that does not answer is asked again after 1, 2, 4 ... 15 minutes.</summary>
    bool Waits(string key, Instant now)
    {
        var tried = post.History(key).Where(l => l.Key == key && !l.IsSettled).ToList();
        return tried.Count > 0 && tried.All(l => now - l.At < Duration.Min(Duration.FromMinutes(Math.Pow(2, Math.Min(l.Attempts - 1, 10))), longestBackOff));
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The handover {Key} is not mailed: it is {Late} late, and the page has it")]
    private partial void Skipped(string key, TimeSpan late);
}

/// <summary>The minute's look at the calendar.</summary>
[DisallowConcurrentExecution]
sealed class HandoverJob(HandoverPost post) : IJob
{
    /// <summary>At each full minute: the handover comes at its hour, and is caught up within a minute after a downtime.</summary>
    public const string EachMinute = "0 * * * * ?";

    /// <summary>Nothing to look at where nobody gets the mail.</summary>
    public static void Schedule(IQuartzBuilder quartz, StudioPlan plan)
    {
        if (plan.Configuration.Handover.MailTo.Count == 0) return;
        quartz.ScheduleJob<HandoverJob>(
            t => t.WithIdentity("handover").WithCronSchedule(EachMinute, c => c.InTimeZone(TimeZoneInfo.FindSystemTimeZoneById(plan.Zone.Id))),
            j => j.WithIdentity("handover"));
    }

    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) => await post.Look(cancellationToken);
}
