using HotShop.Monitor.Configuration;
using HotShop.Monitor.Health;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Alarms;

/// <summary>Which alarms a studio has: from its appliances, their channels and what the configuration changes.</summary>
internal static class AlarmDefinitions
{
    /// <summary>Name of the service itself where an alarm names its appliance.</summary>
    public const string ServiceId = "service";

    static readonly string[] ServiceParts = [HealthBoard.Broker, HealthBoard.Store, HealthBoard.Disk, HealthBoard.Clock, HealthBoard.Outbox];

    public static IReadOnlyList<AlarmDefinition> Of(StudioPlan plan, AlarmPace pace)
    {
        var mains = plan.Appliances.SelectMany(a => a.Channels.Where(c => c.Quantity == Quantity.Mains && IsOn(a, AlarmKinds.MainsLost))
            .Select(c => $"{a.Id}.{AlarmKinds.MainsLost}.{c.Name}")).ToList();
        var all = ServiceParts.Select(Trouble).ToList();
        foreach (var appliance in plan.Appliances) all.AddRange(OfAppliance(appliance, mains, pace));
        return all;
    }

    static bool IsOn(AppliancePlan appliance, string kind) => !appliance.Options.Alarms.TryGetValue(kind, out var options) || options.Enabled;

    static AlarmDefinition Trouble(string part)
    {
        var row = AlarmDefaults.Of(AlarmKinds.ServiceTrouble, null)!;
        return new AlarmDefinition
        {
            Appliance = ServiceId, ApplianceName = "The monitor", Kind = AlarmKinds.ServiceTrouble, Channel = part, Priority = row.Priority,
            OnDelay = Duration.FromSeconds(row.OnDelaySeconds), OffDelay = Duration.FromSeconds(row.OffDelaySeconds),
        };
    }

    static IEnumerable<AlarmDefinition> OfAppliance(AppliancePlan appliance, IReadOnlyList<string> mains, AlarmPace pace)
    {
        var junctions = appliance.Channels.Select(c => c.ColdJunction).ToHashSet();
        var hasFlame = appliance.Channel(Quantity.Flame) is not null;
        foreach (var channel in appliance.Channels)
            foreach (var kind in OfChannel(appliance, channel, isJunction: junctions.Contains(channel.Id)))
                if (One(appliance, kind, channel) is { } definition)
                    yield return definition with { Causes = CausesOf(kind, appliance, channel, mains) };

        if (hasFlame && One(appliance, AlarmKinds.FlameFailure, null) is { } flame)
            yield return flame with
            {
                Causes = [.. mains, .. appliance.Channels.Where(c => c.Quantity == Quantity.LockOut && IsOn(appliance, AlarmKinds.LockOut)).Select(c => $"{appliance.Id}.{AlarmKinds.LockOut}.{c.Name}")],
            };
        if (!hasFlame && HotTemperature(appliance) is not null && appliance.Channel(Quantity.GasFlow) is not null && One(appliance, AlarmKinds.FallingWithGas, null) is { } falling)
            yield return falling;
        if (HotTemperature(appliance) is not null && One(appliance, AlarmKinds.AnnealerDrift, null) is { } drift)
            yield return drift with { Causes = mains };
        foreach (var silent in Silent(appliance, mains, pace)) yield return silent;
    }

    static IEnumerable<string> OfChannel(AppliancePlan appliance, ChannelPlan channel, bool isJunction) => channel.Quantity switch
    {
        Quantity.Temperature when !isJunction && appliance.Kind != ApplianceKind.Shop => [AlarmKinds.Overheat],
        Quantity.CarbonMonoxide => [AlarmKinds.CarbonMonoxide, AlarmKinds.CarbonMonoxideWarning],
        Quantity.CombustibleGas => [AlarmKinds.CombustibleGas, AlarmKinds.CombustibleGasWarning],
        Quantity.Mains => [AlarmKinds.MainsLost],
        Quantity.LockOut => [AlarmKinds.LockOut],
        _ => [],
    };

    static IReadOnlyList<string> CausesOf(string kind, AppliancePlan appliance, ChannelPlan channel, IReadOnlyList<string> mains) => kind switch
    {
        AlarmKinds.LockOut => mains,
        AlarmKinds.CarbonMonoxideWarning when IsOn(appliance, AlarmKinds.CarbonMonoxide) => [$"{appliance.Id}.{AlarmKinds.CarbonMonoxide}.{channel.Name}"],
        AlarmKinds.CombustibleGasWarning when IsOn(appliance, AlarmKinds.CombustibleGas) => [$"{appliance.Id}.{AlarmKinds.CombustibleGas}.{channel.Name}"],
        _ => [],
    };

    /// <summary>The temperature that stands for the appliance: the first that is not a thermocouple's terminals.</summary>
    public static ChannelPlan? HotTemperature(AppliancePlan appliance)
    {
        var junctions = appliance.Channels.Select(c => c.ColdJunction).ToHashSet();
        return appliance.Channels.FirstOrDefault(c => c.Quantity == Quantity.Temperature && !junctions.Contains(c.Id));
    }

    /// <summary>A silent device is one cause: the most urgent of its channels calls, the others only show. A setpoint may stop when its programme ends.</summary>
    static IEnumerable<AlarmDefinition> Silent(AppliancePlan appliance, IReadOnlyList<string> mains, AlarmPace pace)
    {
        var causes = new List<string>([.. mains, $"{ServiceId}.{AlarmKinds.ServiceTrouble}.{HealthBoard.Broker}"]);
        foreach (var channel in appliance.Channels.Where(c => c.Quantity != Quantity.Setpoint && !c.IsTyped).OrderBy(c => SilentPriority(appliance.Kind, c.Quantity)))
        {
            if (One(appliance, AlarmKinds.Silent, channel) is not { } definition) continue;
            var usual = channel.OnChangeOnly ? AlarmDefaults.SilentOnChangeSeconds
                : Math.Max(AlarmDefaults.SilentIntervals * channel.Interval.TotalSeconds, pace.LeastSilence.TotalSeconds);
            var isTyped = appliance.Options.Alarms.TryGetValue(AlarmKinds.Silent, out var options);
            yield return definition with
            {
                Limit = definition.Limit ?? usual,
                Priority = (isTyped ? options!.Priority : null) ?? SilentPriority(appliance.Kind, channel.Quantity),
                OffDelay = channel.OnChangeOnly ? Duration.Zero : definition.OffDelay,
                Causes = [.. causes],
            };
            causes.Add(definition.Id);
        }
    }

    static int SilentPriority(ApplianceKind kind, Quantity quantity) => quantity switch
    {
        Quantity.Temperature => kind is ApplianceKind.Furnace or ApplianceKind.Annealer ? 2 : 3,
        Quantity.CarbonMonoxide or Quantity.CombustibleGas or Quantity.Mains => 2,
        Quantity.Flame => kind == ApplianceKind.Furnace ? 2 : 3,
        _ => 3,
    };

    static AlarmDefinition? One(AppliancePlan appliance, string kind, ChannelPlan? channel)
    {
        if (!IsOn(appliance, kind) || AlarmDefaults.Of(kind, appliance.Kind) is not { } row) return null;
        var options = appliance.Options.Alarms.GetValueOrDefault(kind) ?? new AlarmOptions();
        var onDelay = kind == AlarmKinds.FlameFailure && appliance.Channel(Quantity.CallForHeat) is null ? AlarmDefaults.FlameOutWithoutCallSeconds : row.OnDelaySeconds;
        return new AlarmDefinition
        {
            Appliance = appliance.Id, ApplianceName = appliance.Name, ApplianceKind = appliance.Kind, Kind = kind, Channel = channel?.Name,
            Priority = options.Priority ?? row.Priority,
            Limit = options.Limit is { } typed && Limit.Parse(typed) is { } limit ? AlarmKinds.CanonicalLimit(kind, limit) : row.Limit,
            Deadband = options.Deadband is { } band && Limit.Parse(band) is { } difference ? AlarmKinds.CanonicalDeadband(kind, difference) ?? row.Deadband : row.Deadband,
            OnDelay = Duration.FromSeconds(options.OnDelaySeconds ?? onDelay),
            OffDelay = Duration.FromSeconds(options.OffDelaySeconds ?? row.OffDelaySeconds),
            Unit = row.Unit,
        };
    }
}
