using System.Text.Json;
using HotShop.Monitor.Tests.Support;
using Xunit;

namespace HotShop.Monitor.Tests.Web;

/// <summary>Every number that the interface derives has its 95 % interval beside it; what has none is listed here, with the reason.</summary>
public sealed class IntervalTests
{
    /// <summary>Numbers without an interval: TYPE.field, or *.field for all types, and why.</summary>
    static readonly (string Reason, string[] Fields)[] without =
    [
        ("read by a sensor, or typed off a register: the reading itself", [
            "AlarmItem.value", "PointAnswer.value", "PointAnswer.mean", "PointAnswer.min", "PointAnswer.max", "LateAnswer.lowest", "LateAnswer.highest",
            "ExtremeAnswer.celsius", "KeptAnswer.mostKelvin", "LoadAnswer.measuredCelsius", "LoadAnswer.deviationKelvin", "MeasuredPoint.meanCelsius", "MeasuredPoint.minCelsius",
            "MeasuredPoint.maxCelsius", "OpeningAnswer.celsius", "MeterAnswer.sensorValue", "MeterReadingAnswer.reading", "MeterReadingAnswer.newMeterReading", "CandidateAnswer.readValue", "CalibrationAnswer.asReadCelsius", "FlueAnswer.airCelsius"]),
        ("added to a reading: what the two are together has its interval", ["CalibrationAnswer.correctionKelvins"]),
        ("set or written down by people", [
            "AlarmItem.limit", "AccuracyOptions.*", "EfficiencyAnswer.glassCelsius", "SumFieldAnswer.*", "ChannelOptions.*", "CarbonDioxideSource.kilogramsPerKwh", "CarbonDioxideSource.year", "CurvePoint.celsius", "GathersAnswer.massKg", "LoadAnswer.startCelsius",
            "LoadAnswer.dueCelsius", "LoadRequest.startCelsius", "StageText.*", "MeterAnswer.classPercent", "MeterAnswer.counterDigits", "OpeningAnswer.targetCelsius", "PerKilogramAnswer.holdingCelsius",
            "PotAnswer.heightCm", "PotAnswer.heelKg", "PotAnswer.glassYields", "ProfileAnswer.*", "PositionAnswer.*", "ThroughputAnswer.glassKgPerDay", "StudioAnswer.speed"]),
        ("gathers that people logged, at the mass they were given: what they really took is in the mass of the pot", ["PotDayAnswer.gathers", "PotDayAnswer.nominalKg"]),
        ("configured, or typed off a bill", ["Amount.value"]),
        ("a share of time or a number of hours, by the clock; or energy as a bill states it", ["Figure.value"]),
        ("time by the clock", [
            "*.ageSeconds", "*.intervalSeconds", "AccountDay.hours", "KeptAnswer.beyondSeconds", "PotDayAnswer.workedHours", "DueAnswer.leftDays", "DueAnswer.leftHours", "*.measuredShare"]),
        ("time above a reading of the couple, as it stood: what the couple is in doubt for is said where it is asked about", ["CoupleWearAnswer.hoursAbove1000Celsius"]),
        ("counted, or a number given to something", [
            "*.priority", "*.count", "*.days", "*.times", "AccountDay.meterResets", "AccountForecast.basedOnDays", "BrokerSnapshot.*", "DialAnswer.turns", "FuelAnswer.meterResets",
            "HealthAnswer.counters", "HealthAnswer.openPages", "LoadAnswer.stage", "NightGasAnswer.nights", "OutletStatus.waiting", "PersonCost.sessions", "StoreAnswer.*", "TroubleAnswer.rounds",
            "UnknownTopicAnswer.payloadBytes"]),
        ("a property of the glass as its table or the maker states it, and what a curve that people wrote does to it", [
            "LoadGlassAnswer.*", "PotGlassAnswer.meltingPointCelsius", "PotGlassAnswer.workingPointCelsius", "PotGlassAnswer.softeningPointCelsius", "PotGlassAnswer.annealingPointCelsius",
            "PotGlassAnswer.strainPointCelsius", "PotGlassAnswer.coldKgPerM3", "PotGlassAnswer.meltAtCelsius", "PotGlassAnswer.viscosityPaS"]),
        ("a day of the calendar", ["LocalDate.*", "CalendarSystem.*"]),
        ("the width of an interval itself", ["MeterAgainstAnswer.bandShare", "MeterRegisterAnswer.bandShare", "*.expectedKgHalfWidth95"]),
    ];

    [Fact]
    public async Task Every_derived_number_of_the_interface_has_its_interval_beside_it()
    {
        await using var service = await TestService.Start();
        var schemas = (await service.Get("/openapi/v1.json")).GetProperty("components").GetProperty("schemas");
        var bare = schemas.EnumerateObject().SelectMany(s => Bare(s.Name, s.Value)).ToList();
        var known = without.SelectMany(w => w.Fields).ToList();
        var missing = bare.Where(b => !known.Exists(k => Covers(k, b))).ToList();
        Assert.True(missing.Count == 0, $"no interval beside {string.Join(", ", missing)}");
        // An entry that covers nothing is an excuse for something that is gone.
        var idle = known.Where(k => !bare.Exists(b => Covers(k, b))).ToList();
        Assert.True(idle.Count == 0, $"nothing to except any more: {string.Join(", ", idle)}");
    }

    static bool Covers(string entry, string field)
    {
        var ((type, name), (ofType, ofName)) = (Parts(entry), Parts(field));
        return (type == "*" || type == ofType) && (name == "*" || name == ofName);

        static (string, string) Parts(string text) => text.Split('.') is [var a, var b] ? (a, b) : throw new ArgumentException($"'{text}' is no TYPE.field", nameof(text));
    }

    static IEnumerable<string> Bare(string name, JsonElement schema)
    {
        if (!schema.TryGetProperty("properties", out var properties)) return [];
        var names = properties.EnumerateObject().Select(p => p.Name).ToHashSet();
        return properties.EnumerateObject().Where(p => IsNumber(p.Value) && !IsEnd(p.Name, names) && !HasInterval(p.Name, names)).Select(p => $"{name}.{p.Name}");
    }

    /// <summary>An end belongs to a value beside it, and there are two.</summary>
    static bool IsEnd(string name, HashSet<string> names)
    {
        foreach (var end in new[] { "Low95", "High95", "low95", "high95" })
            if (name.EndsWith(end, StringComparison.Ordinal)) return HasInterval(name[..^end.Length] is { Length: > 0 } of ? of : "value", names);
        return false;
    }

    static bool HasInterval(string name, HashSet<string> names) =>
        names.Contains(name) && ((names.Contains(name + "Low95") && names.Contains(name + "High95")) || (name == "value" && names.Contains("low95") && names.Contains("high95")));

    static bool IsNumber(JsonElement schema)
    {
        if (!schema.TryGetProperty("type", out var type)) return false;
        List<string?> types = type.ValueKind == JsonValueKind.Array ? [.. type.EnumerateArray().Select(t => t.GetString())] : [type.GetString()];
        if (types.Contains("number") || types.Contains("integer")) return true;
        return (types.Contains("array") && schema.TryGetProperty("items", out var items) && IsNumber(items))
            || (types.Contains("object") && schema.TryGetProperty("additionalProperties", out var values) && values.ValueKind == JsonValueKind.Object && IsNumber(values));
    }
}
