using HotShop.Monitor.Configuration;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Alarms.Conditions;

/// <summary>Finds the rule of a definition and the channels it looks at.</summary>
internal sealed class Rules(StudioPlan plan, IReadOnlyList<ChannelPlan> channels, AlarmPace pace)
{
    readonly Dictionary<string, Input> inputs = channels.Select((c, i) => new Input(i, c)).ToDictionary(i => i.Plan.Id);

    public Rule Of(AlarmDefinition definition)
    {
        if (definition.Kind == AlarmKinds.ServiceTrouble) return new TroubleRule(definition);
        var appliance = plan.Appliance(definition.Appliance) ?? throw new ArgumentException($"{definition.Id} names no appliance of the plan", nameof(definition));
        var named = definition.Channel is { } name ? inputs[$"{appliance.Id}/{name}"] : null;
        return definition.Kind switch
        {
            AlarmKinds.FlameFailure => new FlameRule(definition, First(appliance, Quantity.Flame)!, First(appliance, Quantity.CallForHeat), First(appliance, Quantity.GasFlow)),
            AlarmKinds.FallingWithGas => new FallingRule(definition, Hot(appliance), First(appliance, Quantity.GasFlow)!),
            AlarmKinds.AnnealerDrift => new DriftRule(definition, Hot(appliance), First(appliance, Quantity.Setpoint)),
            AlarmKinds.Silent => new SilenceRule(definition, named!, rests: appliance.Kind != ApplianceKind.Shop, pace.StartGrace),
            AlarmKinds.MainsLost => new StateRule(definition, named!, wrongWhen: false, rests: false),
            AlarmKinds.LockOut => new StateRule(definition, named!, wrongWhen: true, rests: true),
            _ => new LimitRule(definition, named!),
        };
    }

    Input? First(AppliancePlan appliance, Quantity quantity) => appliance.Channel(quantity) is { } channel ? inputs[channel.Id] : null;

    Input Hot(AppliancePlan appliance) => inputs[AlarmDefinitions.HotTemperature(appliance)!.Id];
}
