using HotShop.Monitor.Modes;
using HotShop.Monitor.Wire;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

static class ApplianceCheck
{
    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        if (configuration.Appliances.Count == 0) found.Add("appliances", "there are none", "describe at least one");
        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < configuration.Appliances.Count; i++)
        {
            var appliance = configuration.Appliances[i];
            var where = $"appliances[{i}]";
            ConfigurationCheck.Id(found, $"{where}.id", appliance.Id);
            if (appliance.Id == "out") found.Add($"{where}.id", "'out' is kept for what the service publishes", "choose another id");
            if (!ids.Add(appliance.Id)) found.Add($"{where}.id", $"'{appliance.Id}' is there twice", "give every appliance an id of its own");
            if (ApplianceKinds.Parse(appliance.Kind) is not { } kind)
            {
                found.Add($"{where}.kind", $"'{appliance.Kind}' is unknown", $"write one of {string.Join(", ", ApplianceKinds.Names)}");
                continue;
            }
            if (appliance.NameplateKilowatts is { } power) found.Range($"{where}.nameplateKilowatts", power, 0.1, 10_000);
            if (appliance.Energy is not (null or "gas" or "electricity"))
                found.Add($"{where}.energy", $"'{appliance.Energy}' is unknown", "write gas or electricity");
            ModesOf(found, where, appliance);
            ChannelCheck.Run(found, where, appliance);
            FlueCheck.Run(found, where, appliance);
            PotCheck(found, where, appliance);
            AlarmLimits(found, where, appliance, kind);
        }
    }

    static void ModesOf(ProblemList found, string where, ApplianceOptions appliance)
    {
        if (ModeNames.Parse(appliance.Mode) is null)
            found.Add($"{where}.mode", $"'{appliance.Mode}' is no mode", $"write one of {string.Join(", ", ModeNames.Names)}");
        for (var i = 0; i < appliance.Timetable.Count; i++)
        {
            var entry = appliance.Timetable[i];
            if (ModeNames.Parse(entry.Mode) is null)
                found.Add($"{where}.timetable[{i}].mode", $"'{entry.Mode}' is no mode", $"write one of {string.Join(", ", ModeNames.Names)}");
            if (!LocalTimePattern.CreateWithInvariantCulture("HH:mm").Parse(entry.At).Success)
                found.Add($"{where}.timetable[{i}].at", $"'{entry.At}' is no time of day", "write HH:MM, e.g. 18:30");
            if (Weekdays.Parse(entry.Days) is null)
                found.Add($"{where}.timetable[{i}].days", $"'{entry.Days}' names no days", "write e.g. daily, mon-fri or tue,thu,sat");
        }
    }

    static void PotCheck(ProblemList found, string where, ApplianceOptions appliance)
    {
        if (appliance.Pot is not { } pot) return;
        found.Range($"{where}.pot.diameterCentimetres", pot.DiameterCentimetres, 10, 150);
        found.Range($"{where}.pot.heightCentimetres", pot.HeightCentimetres, 10, 150);
        if (pot.Shape is not ("cylinder" or "cone" or "rounded"))
            found.Add($"{where}.pot.shape", $"'{pot.Shape}' is unknown", "write cylinder, cone or rounded");
        if (pot.Shape == "cone" && pot.BottomDiameterCentimetres is not (>= 1 and <= 150))
            found.Add($"{where}.pot.bottomDiameterCentimetres", "a cone needs its bottom", "write the inner diameter at the bottom, 1 to 150 cm");
        if (pot.Shape == "rounded" && !(pot.CornerRadiusCentimetres > 0 && pot.CornerRadiusCentimetres <= Math.Min(pot.DiameterCentimetres / 2, pot.HeightCentimetres)))
            found.Add($"{where}.pot.cornerRadiusCentimetres", "a rounded pot needs the radius of its bottom edge", "write it, at most half the diameter and no more than the height");
        foreach (var (material, share) in pot.GlassYields)
        {
            if (HotShop.Physics.Pot.ChargeMaterial.Named(material) is null)
                found.Add($"{where}.pot.glassYields", $"'{material}' is no material", $"write one of {string.Join(", ", HotShop.Physics.Pot.ChargeMaterial.All.Select(m => m.Name))}");
            found.Range($"{where}.pot.glassYields.{material}", share, 0.5, 1);
        }
        GlassChoice.Check(found, $"{where}.pot", pot);
        if (pot.GatherKilograms.Count == 0)
            found.Add($"{where}.pot.gatherKilograms", "there is no size of gather", "name at least one with its mass in kg, or leave it out for the usual three");
        if (pot.StartKilograms is { } start) found.Range($"{where}.pot.startKilograms", start, 0, 5000);
        found.Range($"{where}.pot.heelKilograms", pot.HeelKilograms, 0, 1000);
        foreach (var (size, kilograms) in pot.GatherKilograms)
            found.Range($"{where}.pot.gatherKilograms.{size}", kilograms, 0.01, 20);
        found.Range($"{where}.pot.scaleUncertaintyPercent", pot.ScaleUncertaintyPercent, 0, 20);
        found.Range($"{where}.pot.hoursToClear", pot.HoursToClear, 0, 72);
    }

    static void AlarmLimits(ProblemList found, string where, ApplianceOptions appliance, ApplianceKind kind)
    {
        foreach (var (name, options) in appliance.Alarms)
        {
            if (!AlarmKinds.OfAppliances.Contains(name))
            {
                found.Add($"{where}.alarms.{name}", "there is no such kind of alarm", $"write one of {string.Join(", ", AlarmKinds.OfAppliances)}");
                continue;
            }
            LimitOf(found, $"{where}.alarms.{name}", name, options);
            if (options.Priority is { } priority) found.Range($"{where}.alarms.{name}.priority", priority, 1, 3);
            if (options.OnDelaySeconds is { } on) found.Range($"{where}.alarms.{name}.onDelaySeconds", on, 0, 86_400);
            if (options.OffDelaySeconds is { } off) found.Range($"{where}.alarms.{name}.offDelaySeconds", off, 0, 86_400);
            if (name == "overheat" && options.Limit is { } limitText && Limit.Parse(limitText) is { } limit) Overheat(found, $"{where}.alarms.overheat.limit", limit, kind);
        }
    }

    static void LimitOf(ProblemList found, string where, string kind, AlarmOptions options)
    {
        var example = AlarmKinds.LimitExample(kind);
        if (options.Limit is { } text && (Limit.Parse(text) is not { } limit || (kind != AlarmKinds.Overheat && AlarmKinds.CanonicalLimit(kind, limit) is null)))
            found.Add($"{where}.limit", example is null ? $"'{text}': this kind has no limit" : $"'{text}' is no limit with a unit of this kind",
                example is null ? "leave it out" : $"write e.g. {example}");
        if (options.Deadband is { } band && (Limit.Parse(band) is not { } difference || AlarmKinds.CanonicalDeadband(kind, difference) is null))
            found.Add($"{where}.deadband", $"'{band}' is no difference with a unit of this kind", kind == AlarmKinds.Overheat ? "write e.g. 10 K" : $"write it in the unit of the limit{(example is null ? "" : $", e.g. {example}")}");
    }

    static void Overheat(ProblemList found, string where, Limit limit, ApplianceKind kind)
    {
        var (low, high) = PlausibleRange.OfOverheatLimit(kind);
        if (limit.Celsius is not { } celsius)
            found.Add(where, $"'{limit}' is no temperature", "write it in °C, °F or K");
        else if (celsius < low || celsius > high)
            found.Add(where, $"{limit} is {celsius:0} °C ({celsius * 1.8 + 32:0} °F): not plausible for this appliance",
                $"write one from {low:0} to {high:0} °C ({low * 1.8 + 32:0} to {high * 1.8 + 32:0} °F); is the unit right?");
    }
}
