using HotShop.Monitor.Configuration;

namespace HotShop.Monitor.Broker;

/// <summary>Topics under <c>PREFIX/SITE/out</c>, where the service alone speaks.</summary>
static class MqttOutTopics
{
    public static readonly byte[] Online = [.. "online"u8], Offline = [.. "offline"u8];

    public static string Root(StudioPlan plan) => $"{plan.Channels.Prefix}/{plan.Site}/out/";

    public static string Service(StudioPlan plan) => Root(plan) + "service";

    public static string Value(StudioPlan plan, string appliance, string name) => $"{Root(plan)}{appliance}/{name}";

    public static string Alarm(StudioPlan plan, string id) => $"{Root(plan)}alarms/{id.Replace('/', '-')}";
}
