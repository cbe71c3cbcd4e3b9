using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.History.Backup;
using HotShop.Monitor.History.Figures;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Reports.Mail;
using NodaTime.Extensions;
using Quartz;

namespace HotShop.Monitor.Loop;

/// <summary>Lets go of old rows at night, when nobody looks: calendar work, so Quartz calls it.</summary>
[DisallowConcurrentExecution]
sealed partial class NightlyUpkeep(Upkeep upkeep, TimeProvider clock, ILogger<NightlyUpkeep> log) : IJob
{
    public async ValueTask Execute(IJobExecutionContext context, CancellationToken cancellationToken)
    {
        var gone = await upkeep.Run(clock.GetUtcNow().ToInstant(), cancellationToken);
        Done(gone);
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Nightly upkeep: {Rows} rows were older than they are kept")]
    private partial void Done(long rows);
}

static class CalendarJobs
{
    /// <summary>Twenty to four in the studio's zone: most zones change their clocks before.</summary>
    public const string NightlyAt = "0 40 3 * * ?";

    public static IServiceCollection AddCalendarJobs(this IServiceCollection services, StudioPlan plan, TimeProvider clock) => services
        .AddQuartz(q =>
        {
            q.UseTimeProvider(clock);
            q.ScheduleJob<NightlyUpkeep>(
                t => t.WithIdentity("nightly-upkeep").WithCronSchedule(NightlyAt, c => c.InTimeZone(TimeZoneInfo.FindSystemTimeZoneById(plan.Zone.Id))),
                j => j.WithIdentity("nightly-upkeep"));
            q.ScheduleJob<DayStatement>(
                t => t.WithIdentity("day-statement").WithCronSchedule(DayStatement.At, c => c.InTimeZone(TimeZoneInfo.FindSystemTimeZoneById(plan.Zone.Id))),
                j => j.WithIdentity("day-statement"));
            // At night, and two minutes after a start, where it looks whether last night's is there.
            var backup = new JobKey("nightly-backup");
            q.AddJob<NightlyBackup>(j => j.WithIdentity(backup).StoreDurably());
            q.AddTrigger(t => t.ForJob(backup).WithIdentity("nightly-backup").WithCronSchedule(NightlyBackup.At, c => c.InTimeZone(TimeZoneInfo.FindSystemTimeZoneById(plan.Zone.Id))));
            q.AddTrigger(t => t.ForJob(backup).WithIdentity("backup-after-start").StartAt(clock.GetUtcNow().AddMinutes(2)));
            MonthlyReport.Schedule(q, plan, clock);
            HandoverJob.Schedule(q, plan);
        })
        .AddQuartzHostedService(o => o.WaitForJobsToComplete = true);
}
