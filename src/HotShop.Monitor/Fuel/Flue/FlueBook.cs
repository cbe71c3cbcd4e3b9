using System.Globalization;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Combustion;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Fuel.Flue;

/// <summary>Excess air and available heat of gas fires, from the newest readings in their flues.</summary>
public sealed class FlueBook(StudioPlan plan, LatestReadings latest)
{
    readonly StudioGas gas = new(plan.Configuration.Gas);

    /// <summary>Appliances with an analyser in the flue.</summary>
    public IEnumerable<AppliancePlan> Appliances => plan.Appliances.Where(Has);

    public static bool Has(AppliancePlan appliance) => appliance.Channel(Quantity.Oxygen) is not null && appliance.Kind is ApplianceKind.Furnace or ApplianceKind.GloryHole;

    public FlueReport At(AppliancePlan appliance, Instant now)
    {
        var options = appliance.Options.Flue ?? new FlueOptions();
        var analyser = appliance.Channel(Quantity.Oxygen)!;
        if (Fresh(analyser, now) is not { } reading)
            return FlueReport.Nothing(latest.Of(analyser)?.At, null, latest.Of(analyser) is null ? "there is no reading of oxygen yet" : "the last reading of oxygen is old or not believable");
        var doubts = new FlueDoubts(options.OxygenUncertaintyPercent, options.TemperatureUncertaintyKelvins);
        var oxygen = FlueReport.Within("oxygen reading", reading.Value, doubts.OxygenPercent);
        if (appliance.Channel(Quantity.Flame) is { } flame && Fresh(flame, now) is { Value: < 0.5 })
            return FlueReport.Nothing(reading.At, oxygen, "there is no flame: the flue tells of no fire");
        if (!FlueReport.IsFire(reading.Value))
            return FlueReport.Nothing(reading.At, oxygen, Text($"{reading.Value:0.0} % oxygen is nearly air: the fire is out, or the probe draws from outside"));
        if (reading.Value < -doubts.OxygenPercent)
            return FlueReport.Nothing(reading.At, oxygen, Text($"{reading.Value:0.0} % oxygen is below nothing: have the analyser checked"));
        // An analyser may show a little less than nothing within what it may be off.
        var flue = new FlueReading(gas.Mixture, Math.Max(0, reading.Value / 100), options.Sample == "wet", doubts);
        return WithHeat(new FlueReport(reading.At, oxygen, null) { ExcessAir = flue.ExcessAir }, flue, appliance, options, doubts, now);
    }

    FlueReport WithHeat(FlueReport report, FlueReading flue, AppliancePlan appliance, FlueOptions options, FlueDoubts doubts, Instant now)
    {
        if (options.Temperature is null) return report;
        if (Celsius(appliance, options.Temperature, now) is not { } flueCelsius) return report with { Problem = "the temperature of the flue gas is old or not believable" };
        if (AirCelsius(appliance, options, now) is not { } airCelsius) return report with { Problem = "the temperature of the air for burning is old or not believable" };
        var known = report with { FlueCelsius = FlueReport.Within("flue temperature", flueCelsius, doubts.FlueKelvin), AirCelsius = airCelsius };
        return HeatBalance.Covers(flueCelsius, airCelsius)
            ? known with { AvailableHeat = flue.AvailableOfGross(flueCelsius, airCelsius) }
            : known with { Problem = Text($"heat is worked out for flue gas of {HeatBalance.LeastFlueCelsius:0} to {HeatBalance.MostFlueCelsius:0} °C") };
    }

    double? AirCelsius(AppliancePlan appliance, FlueOptions options, Instant now) =>
        options.AirTemperature is { } channel ? Celsius(appliance, channel, now) : options.AirCelsius;

    double? Celsius(AppliancePlan appliance, string channel, Instant now) => appliance.Channels.FirstOrDefault(c => c.Name == channel) is { } thermometer ? Fresh(thermometer, now)?.Value : null;

    LatestReading? Fresh(ChannelPlan channel, Instant now) => latest.QualityOf(channel, now) is Quality.Good or Quality.Late ? latest.Of(channel) : null;

    static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
