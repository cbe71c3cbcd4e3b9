using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Broker;

/// <summary>Adds the broker that the configuration asks for. Needs the plan, <see cref="Wire.IIntake"/>, the health board and a time provider beside it.</summary>
static class BrokerRegistration
{
    /// <remarks>Add it after the store: hosted parts stop in reverse order, and the broker must be gone before the store closes.</remarks>
    public static IServiceCollection AddBroker(this IServiceCollection services, StudioPlan plan)
    {
        services.AddSingleton<BrokerCounters>();
        return plan.Configuration.Broker.Mode == "outside" ? services.AddLink<OutsideBroker>() : services.AddLink<EmbeddedBroker>();
    }

    static IServiceCollection AddLink<TLink>(this IServiceCollection services) where TLink : BackgroundService, IBrokerLink
    {
        services.AddSingleton<TLink>().AddSingleton<IBrokerLink>(all => all.GetRequiredService<TLink>());
        // MQTT out first, so that it hears of the first connection.
        services.AddSingleton<MqttOut>().AddHostedService(all => all.GetRequiredService<MqttOut>());
        return services.AddHostedService(all => all.GetRequiredService<TLink>());
    }
}
