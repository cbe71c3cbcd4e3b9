using HotShop.Monitor.Configuration;
using Quartz;

namespace HotShop.Monitor.Handover;

static class HandoverSetup
{
    /// <summary>Needs in the container: data, money, annealing, alarms and notifications.</summary>
    public static IServiceCollection AddHandover(this IServiceCollection services, StudioPlan plan)
    {
        services.AddSingleton<NightCalendar>().AddSingleton<ApplianceNights>().AddSingleton<NightTroubles>().AddSingleton<NightGasBook>().AddSingleton<WornParts>().AddSingleton<Takeover>();
        services.AddSingleton<HandoverWords>().AddSingleton<HandoverBook>().AddSingleton<HandoverPost>();
        if (plan.Configuration.Handover.MailTo.Count > 0)
            services.AddQuartz(q => q.ScheduleJob<HandoverJob>(
                t => t.WithIdentity("handover").WithCronSchedule(HandoverJob.EachMinute),
                j => j.WithIdentity("handover")));
        return services;
    }
}
