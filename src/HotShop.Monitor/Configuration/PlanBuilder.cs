using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;
using NodaTime;

namespace HotShop.Monitor.Configuration;

/// <summary>Turns a checked configuration into the plan that the service works from.</summary>
public static class PlanBuilder
{
    /// <param name="configuration">Without problems after <see cref="ConfigurationCheck"/>.</param>
    /// <param name="baseDirectory">Folder of the configuration file: relative paths start there.</param>
    public static StudioPlan Build(StudioConfiguration configuration, string baseDirectory)
    {
        var appliances = configuration.Appliances.Select(a => Appliance(a, configuration)).ToList();
        var channels = new ChannelDirectory(configuration.Broker.Prefix, configuration.Site,
            appliances.Select(a => a.Id), appliances.SelectMany(a => a.Channels), configuration.Buttons.Select(b => b.Plan(configuration)), configuration.Broker.ListenAlso);
        return new StudioPlan(configuration, DateTimeZoneProviders.Tzdb[configuration.Zone], appliances, channels,
            Path.GetFullPath(configuration.DataDirectory, baseDirectory)) { BaseDirectory = Path.GetFullPath(baseDirectory) };
    }

    static AppliancePlan Appliance(ApplianceOptions options, StudioConfiguration configuration)
    {
        var kind = ApplianceKinds.Parse(options.Kind)!.Value;
        var channels = options.Channels.Select(c => Channel(c, options, kind, configuration)).ToList();
        return new AppliancePlan(options.Id, options.Name ?? options.Id, kind, options, channels);
    }

    static ChannelPlan Channel(ChannelOptions options, ApplianceOptions appliance, ApplianceKind kind, StudioConfiguration configuration)
    {
        if (!Quantities.TryParse(options.Quantity, out var quantity)) throw new ArgumentException($"unchecked quantity '{options.Quantity}'", nameof(options));
        var (low, high) = PlausibleRange.Of(kind, quantity);
        return new ChannelPlan
        {
            Appliance = appliance.Id,
            Name = options.Id,
            Quantity = quantity,
            Topic = options.Topic ?? $"{configuration.Broker.Prefix}/{configuration.Site}/{appliance.Id}/{options.Id}",
            DefaultUnit = options.Unit,
            Thermocouple = options.Thermocouple is { } type ? Enum.Parse<ThermocoupleType>(type) : null,
            ColdJunction = options.ColdJunction is { } junction ? $"{appliance.Id}/{junction}" : null,
            Accuracy = AccuracyPlans.Uncertainty(options),
            Calibrations = AccuracyPlans.Calibrations(options, DateTimeZoneProviders.Tzdb[configuration.Zone]),
            ValuePointer = options.ValuePointer,
            TimePointer = options.TimePointer,
            Interval = Duration.FromSeconds(options.IntervalSeconds),
            OnChangeOnly = options.Reports == "on-change",
            IsTyped = options.Reports == "typed",
            ClassPercent = options.Class ?? ChannelPlan.UsualClassPercent,
            Serves = options.Serves.Count > 0 ? options.Serves : kind == ApplianceKind.Shop ? [] : [appliance.Id],
            Parent = options.Parent,
            PlausibleLow = PlausibleRange.Typed(options.PlausibleLow, quantity) ?? low,
            PlausibleHigh = PlausibleRange.Typed(options.PlausibleHigh, quantity) ?? high,
            CubicMetresPerPulse = options.CubicMetresPerPulse,
            CounterDigits = options.CounterDigits,
            CounterMaximumPerHour = options.CounterMaximumPerHour,
            NameplateKilowatts = options.NameplateKilowatts,
        };
    }
}

/// <summary>Names of the kinds of appliance, as the configuration and the interfaces spell them.</summary>
public static class ApplianceKinds
{
    static readonly (ApplianceKind Kind, string Name)[] All =
    [
        (ApplianceKind.Furnace, "furnace"), (ApplianceKind.GloryHole, "glory-hole"), (ApplianceKind.Annealer, "annealer"),
        (ApplianceKind.PickUpOven, "pick-up-oven"), (ApplianceKind.Shop, "shop"),
    ];

    public static IEnumerable<string> Names => All.Select(k => k.Name);

    public static string NameOf(this ApplianceKind kind) => All[(int)kind].Name;

    public static ApplianceKind? Parse(string name)
    {
        foreach (var known in All) if (known.Name == name) return known.Kind;
        return null;
    }
}
