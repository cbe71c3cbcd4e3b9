namespace HotShop.Monitor.Handover;

static class HandoverSetup
{
    /// <summary>Needs in the container: data, money, annealing, alarms and notifications.</summary>
    public static IServiceCollection AddHandover(this IServiceCollection services)
    {
        services.AddSingleton<NightCalendar>().AddSingleton<ApplianceNights>().AddSingleton<NightTroubles>().AddSingleton<NightGasBook>().AddSingleton<WornParts>().AddSingleton<Takeover>();
        return services.AddSingleton<HandoverWords>().AddSingleton<HandoverBook>().AddSingleton<HandoverPost>();
    }
}
