using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;

namespace HotShop.Monitor.Fuel;

public enum EnergyKind { Gas, Electricity }

/// <summary>A channel that tells of energy, and how: measured, or only estimated from a nameplate and a relay.</summary>
public sealed record FuelSource(ChannelPlan Channel, EnergyKind Kind, bool IsMeasured)
{
    /// <summary>
    /// The sources of an appliance. A counter is believed before a flow or a power of the same kind: it knows what passed in a gap.
    /// A nameplate is used only where nothing of that kind is measured.
    /// </summary>
    /// <param name="speaks">Whether a channel has anything to tell of the time in question; null: all that are described have. Where none of a kind has, the first stands for it.</param>
    public static IReadOnlyList<FuelSource> Of(AppliancePlan appliance, Func<ChannelPlan, bool>? speaks = null)
    {
        if (speaks is null) return Best(appliance);
        var told = Best(appliance with { Channels = [.. appliance.Channels.Where(speaks)] });
        return [.. told, .. Best(appliance).Where(s => told.All(t => t.Kind != s.Kind))];
    }

    static List<FuelSource> Best(AppliancePlan appliance)
    {
        var gas = First(appliance, EnergyKind.Gas, Quantity.GasVolume) ?? First(appliance, EnergyKind.Gas, Quantity.GasFlow) ?? Nameplate(appliance, EnergyKind.Gas, Quantity.Valve);
        var power = First(appliance, EnergyKind.Electricity, Quantity.Energy) ?? First(appliance, EnergyKind.Electricity, Quantity.Power) ?? Nameplate(appliance, EnergyKind.Electricity, Quantity.Relay);
        return [.. new[] { gas, power }.OfType<FuelSource>()];
    }

    static FuelSource? First(AppliancePlan appliance, EnergyKind kind, Quantity quantity) =>
        appliance.Channels.FirstOrDefault(c => c.Quantity == quantity && IsOwn(c, appliance)) is { } channel ? new FuelSource(channel, kind, IsMeasured: true) : null;

    /// <summary>A meter that people read sends nothing, and one that serves other appliances tells of them.</summary>
    static bool IsOwn(ChannelPlan channel, AppliancePlan appliance) =>
        !channel.IsTyped && (channel.Serves.Count == 0 || (channel.Serves.Count == 1 && channel.Serves[0] == appliance.Id));

    static FuelSource? Nameplate(AppliancePlan appliance, EnergyKind kind, Quantity quantity) =>
        appliance.Channels.FirstOrDefault(c => c.Quantity == quantity && c.NameplateKilowatts is not null) is { } channel ? new FuelSource(channel, kind, IsMeasured: false) : null;

    /// <summary>Relative standard uncertainty of its energy: the meter's class, and of gas its conditions and heating value; or the nameplate's.</summary>
    public double EnergyRelative(StudioGas gas) => !IsMeasured ? FuelDoubt.Nameplate.StandardUncertainty : Kind == EnergyKind.Gas ? double.Hypot(FuelDoubt.Of(Channel), gas.EnergyRelative) : FuelDoubt.Of(Channel);

    /// <summary>The same of its volume at base conditions: the heating value has no part in it.</summary>
    public double VolumeRelative(StudioGas gas) => IsMeasured && Kind == EnergyKind.Gas ? double.Hypot(FuelDoubt.Of(Channel), gas.VolumeRelative) : 0;

    /// <summary>Energy of an hour row in kWh (gas: gross at base conditions) and, for a gas meter, its volume at base conditions in m³.</summary>
    public (double KilowattHours, double? BaseCubicMetres) EnergyOf(HourRow hour, StudioGas gas)
    {
        if (!IsMeasured) return (hour.Amount * Channel.NameplateKilowatts!.Value, null);
        if (Kind == EnergyKind.Electricity) return (hour.Amount, null);
        var baseCubicMetres = gas.ToBase(hour.Amount);
        return (gas.Fuel.GrossKilowattHours(baseCubicMetres), baseCubicMetres);
    }
}
