using HotShop.Monitor.Wire;
using HotShop.Physics.Thermometry;

namespace HotShop.Monitor.Configuration;

static class ChannelCheck
{
    public static void Run(ProblemList found, string where, ApplianceOptions appliance)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < appliance.Channels.Count; i++)
        {
            var channel = appliance.Channels[i];
            var at = $"{where}.channels[{i}]";
            ConfigurationCheck.Id(found, $"{at}.id", channel.Id);
            if (channel.Id == "log") found.Add($"{at}.id", "'log' is kept for log entries", "choose another id");
            if (!ids.Add(channel.Id)) found.Add($"{at}.id", $"'{channel.Id}' is there twice", "give every channel of an appliance an id of its own");
            if (Quantities.TryParse(channel.Quantity, out var quantity)) Measuring(found, at, channel, quantity);
            else found.Add($"{at}.quantity", $"'{channel.Quantity}' is unknown", $"write one of {string.Join(", ", Quantities.Names)}");
            found.Range($"{at}.intervalSeconds", channel.IntervalSeconds, 0.1, 86_400);
            if (channel.Reports is not ("periodic" or "on-change" or "typed"))
                found.Add($"{at}.reports", $"'{channel.Reports}' is unknown", "write periodic, on-change or typed");
            if (channel.Reports == "typed" && channel.Quantity is not ("gas-volume" or "energy"))
                found.Add($"{at}.reports", $"{channel.Quantity} cannot be typed", "only meters are read by people: gas-volume or energy");
            Numbers(found, at, channel);
            Couple(found, at, channel, appliance);
            AccuracyCheck.Run(found, at, channel);
            Addresses(found, at, channel);
        }
    }

    static void Measuring(ProblemList found, string at, ChannelOptions channel, Quantity quantity)
    {
        if (channel.Unit is { } unit && Ucum.ProblemWith(unit, quantity) is not null)
            found.Add($"{at}.unit", $"'{unit}' is no unit of {channel.Quantity}", Ucum.Offer(quantity));
        else if (channel.Unit is { } known && PlausibleRange.Typed(1, known, quantity) is null && channel.Thermocouple is null && channel.CubicMetresPerPulse is null)
            found.Add($"{at}.unit", $"'{known}' alone tells no {channel.Quantity}", quantity == Quantity.GasVolume ? "add cubicMetresPerPulse" : "add thermocouple and coldJunction");
        var low = Plausible(found, $"{at}.plausibleLow", channel.PlausibleLow, quantity);
        var high = Plausible(found, $"{at}.plausibleHigh", channel.PlausibleHigh, quantity);
        if (low >= high) found.Add($"{at}.plausibleLow", $"'{channel.PlausibleLow}' is not below '{channel.PlausibleHigh}'", "write the lower of the two here");
    }

    static double? Plausible(ProblemList found, string where, string? text, Quantity quantity)
    {
        if (text is null) return null;
        var typed = PlausibleRange.Typed(text, quantity);
        if (typed is null)
            found.Add(where, $"'{text}' is no value with a unit of this quantity", quantity is Quantity.Temperature or Quantity.Setpoint ? "write e.g. 1450 °C or 2640 °F" : Ucum.Offer(quantity));
        return typed;
    }

    static void Numbers(ProblemList found, string at, ChannelOptions channel)
    {
        if (channel.CounterDigits is { } digits) found.Range($"{at}.counterDigits", digits, 3, 12);
        if (channel.CounterMaximumPerHour is { } most) found.Range($"{at}.counterMaximumPerHour", most, 0.001, 1_000_000);
        if (channel.CubicMetresPerPulse is { } volume) found.Range($"{at}.cubicMetresPerPulse", volume, 0.000001, 1000);
        // Class 0.2 is a transfer standard; beyond 20 a sensor tells nothing a nameplate does not.
        if (channel.Class is { } percent) found.Range($"{at}.class", percent, 0.1, 20);
        if (channel.NameplateKilowatts is { } power) found.Range($"{at}.nameplateKilowatts", power, 0.01, 10_000);
    }

    static void Couple(ProblemList found, string at, ChannelOptions channel, ApplianceOptions appliance)
    {
        // By name only: the parser of enumerations would take a number as well.
        if (channel.Thermocouple is { } type && !Enum.GetNames<ThermocoupleType>().Contains(type))
            found.Add($"{at}.thermocouple", $"'{type}' is no type", "write B, E, J, K, N, R, S or T");
        // A converter that sends °C knows its own terminals; of a couple in mV only we can.
        if (channel.Thermocouple is not null && channel.ColdJunction is null && (channel.Accuracy is null || channel.Unit is null || Ucum.ToStored(0, channel.Unit, InDegrees) is { Problem: not null }))
            found.Add($"{at}.coldJunction", "a thermocouple in mV needs the temperature of its terminals", "name the channel of this appliance that measures them; for a device that sends degrees say so by unit, e.g. Cel, beside accuracy");
        if (channel.ColdJunction is not { } junction) return;
        if (appliance.Channels.All(c => c.Id != junction))
            found.Add($"{at}.coldJunction", $"there is no channel '{junction}' in this appliance", "name one that is there");
        else if (junction == channel.Id || appliance.Channels.First(c => c.Id == junction).Quantity != "temperature")
            found.Add($"{at}.coldJunction", $"'{junction}' does not measure the temperature of the terminals", "name a channel that does");
    }

    static ChannelPlan InDegrees { get; } = new() { Appliance = "", Name = "", Topic = "", Quantity = Quantity.Temperature };

    static void Addresses(ProblemList found, string at, ChannelOptions channel)
    {
        if (channel.Topic is { } topic && (topic.Length == 0 || topic.AsSpan().ContainsAny("#+\0")))
            found.Add($"{at}.topic", $"'{topic}' is no topic of one device", "write it in full, without # and +");
        foreach (var (key, pointer) in new[] { ("valuePointer", channel.ValuePointer), ("timePointer", channel.TimePointer) })
            if (pointer is not null && !Json.Pointer.JsonPointer.TryParse(pointer, out _))
                found.Add($"{at}.{key}", $"'{pointer}' is no JSON Pointer", "write one such as /sensors/0/t");
    }
}
