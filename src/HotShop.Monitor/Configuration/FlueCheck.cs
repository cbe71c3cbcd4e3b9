namespace HotShop.Monitor.Configuration;

static class FlueCheck
{
    public static void Run(ProblemList found, string where, ApplianceOptions appliance)
    {
        if (appliance.Flue is not { } flue) return;
        if (appliance.Channels.All(c => c.Quantity != "oxygen"))
            found.Add($"{where}.flue", "no channel of this appliance measures oxygen", "add one with the quantity oxygen, or leave flue out");
        if (flue.Sample is not ("dry" or "wet"))
            found.Add($"{where}.flue.sample", $"'{flue.Sample}' is unknown", "write dry or wet");
        Thermometer(found, $"{where}.flue.temperature", flue.Temperature, appliance);
        Thermometer(found, $"{where}.flue.airTemperature", flue.AirTemperature, appliance);
        found.Range($"{where}.flue.airCelsius", flue.AirCelsius, -40, 1200);
        found.Range($"{where}.flue.oxygenUncertaintyPercent", flue.OxygenUncertaintyPercent, 0, 2);
        found.Range($"{where}.flue.temperatureUncertaintyKelvins", flue.TemperatureUncertaintyKelvins, 0, 200);
    }

    static void Thermometer(ProblemList found, string where, string? channel, ApplianceOptions appliance)
    {
        if (channel is not null && appliance.Channels.All(c => c.Id != channel || c.Quantity != "temperature"))
            found.Add(where, $"'{channel}' is no temperature of this appliance", "name one of its channels that measures a temperature");
    }
}
