using HotShop.Monitor.Configuration;
using NodaTime.Extensions;
using Quartz;

namespace HotShop.Monitor.Reports.Mail;

/// <summary>
/// Looks on the 1st, at its hour by the studio's clock, and every ten minutes from the start on: what was missed or could not be sent is caught up. When a report is due
/// is said by <see cref="ReportCalendar"/>; looking once too often sends nothing.
/// </summary>
[DisallowConcurrentExecution]
sealed class MonthlyReport(ReportRound round, TimeProvider clock) : IJob
{
    static readonly TimeSpan again = TimeSpan.FromMinutes(10);

    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken) => await round.Run(clock.GetUtcNow().ToInstant(), cancellationToken);

    public static void Schedule(IQuartzBuilder quartz, StudioPlan plan, TimeProvider clock)
    {
        if (plan.Configuration.Reports is not { MailTo.Count: > 0 } options) return;
        var job = new JobKey("monthly-report");
        quartz.AddJob<MonthlyReport>(j => j.WithIdentity(job).StoreDurably());
        quartz.AddTrigger(t => t.ForJob(job).WithIdentity("monthly-report")
            .WithCronSchedule($"0 0 {options.Hour} 1 * ?", c => c.InTimeZone(TimeZoneInfo.FindSystemTimeZoneById(plan.Zone.Id))));
        quartz.AddTrigger(t => t.ForJob(job).WithIdentity("report-again").StartAt(clock.GetUtcNow().AddSeconds(30)).WithSimpleSchedule(s => s.WithInterval(again).RepeatForever()));
    }
}
