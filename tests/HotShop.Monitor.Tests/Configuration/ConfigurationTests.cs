using System.Text.Json;
using HotShop.Monitor.Commands;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using Json.Schema;
using Xunit;

namespace HotShop.Monitor.Tests.Configuration;

/// <summary>The configuration file: every mistake is named with where, what and what to do, and all of them at once.</summary>
public class ConfigurationTests
{
    static readonly string starter = InitCommand.Starter();

    static IReadOnlyList<string> Problems(StudioConfiguration configuration) => [.. ConfigurationCheck.Problems(configuration, "hotshop.json").Select(p => p.ToString())];

    static string ProblemOf(string text) => Assert.Single(Assert.Throws<ConfigurationException>(() => ConfigurationFile.Parse(text, "hotshop.json")).Problems).ToString();

    [Fact]
    public void The_starter_file_loads_without_a_problem() => Assert.Empty(Problems(ConfigurationFile.Parse(starter, "hotshop.json")));

    [Fact]
    public void The_starter_file_and_its_schema_agree()
    {
        var schema = JsonSchema.FromText(ConfigurationSchema.Text());
        using var document = JsonDocument.Parse(starter, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        var result = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List });
        Assert.True(result.IsValid, string.Join("; ", (result.Details ?? []).Where(d => d.Errors is not null).SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation} {e.Value}"))));
    }

    [Theory, InlineData("\"site\": \"my-studio\",", ""), InlineData("\"listen\": \"127.0.0.1:5080\"", "\"lisen\": \"127.0.0.1:5080\""), InlineData("\"altitudeMetres\": 0", "\"altitudeMetres\": \"low\"")]
    public void The_schema_finds_what_the_reader_finds(string written, string slip)
    {
        var text = starter.Replace(written, slip, StringComparison.Ordinal);
        Assert.NotEqual(starter, text);
        using var document = JsonDocument.Parse(text, new JsonDocumentOptions { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true });
        Assert.False(JsonSchema.FromText(ConfigurationSchema.Text()).Evaluate(document.RootElement).IsValid);
        Assert.Throws<ConfigurationException>(() => ConfigurationFile.Parse(text, "hotshop.json"));
    }

    [Fact]
    public void The_schema_has_a_place_for_its_own_name_and_none_for_a_secret()
    {
        using var schema = JsonDocument.Parse(ConfigurationSchema.Text());
        Assert.True(schema.RootElement.GetProperty("properties").TryGetProperty("$schema", out _));
        Assert.DoesNotContain(Names(schema.RootElement), n => (n.Contains("password", StringComparison.OrdinalIgnoreCase) || n.Contains("token", StringComparison.OrdinalIgnoreCase)) && !n.EndsWith("File", StringComparison.Ordinal));
    }

    static IEnumerable<string> Names(JsonElement schema) => schema.ValueKind switch
    {
        JsonValueKind.Object => schema.EnumerateObject().SelectMany(p => p.Name == "properties" ? p.Value.EnumerateObject().SelectMany(q => Names(q.Value).Prepend(q.Name)) : Names(p.Value)),
        JsonValueKind.Array => schema.EnumerateArray().SelectMany(Names),
        _ => [],
    };

    [Fact]
    public void Comments_and_trailing_commas_are_fine() =>
        Assert.Equal("s", ConfigurationFile.Parse("""{ /* ours */ "site": "s", "appliances": [], } // end""", "hotshop.json").Site);

    [Theory]
    [InlineData("""{"site":"s","appliances":[],"colour":"red"}""", "hotshop.json, line 1", "unknown key 'colour'")]
    [InlineData("""{"appliances":[]}""", "hotshop.json", "missing: 'site'")]
    [InlineData("""{"site":"s","appliances":[],"zone":null}""", "$.zone", "'zone' is null")]
    [InlineData("""{"site":"s","appliances":[null]}""", "appliances[0]", "it is null")]
    [InlineData("""{"site":"s","appliances":[{"id":"a","kind":"furnace","channels":[],"alarms":{"overheat":null}}]}""", "appliances[0].alarms.overheat", "it is null")]
    [InlineData("""{"site":"s","site":"t","appliances":[]}""", "hotshop.json", "'site' is there twice")]
    [InlineData("""{"site":"s","appliances":{}}""", "$.appliances", "expected")]
    [InlineData("""{"site":"s","appliances":[],"gas":{"altitudeMetres":"low"}}""", "$.gas.altitudeMetres", "expected a number")]
    [InlineData("""{"site":"s","appliances":[""", "hotshop.json, line 1", "end")]
    [InlineData("""{"site":"s" "appliances":[]}""", "hotshop.json, line 1", "Expected either ','")]
    [InlineData("null", "hotshop.json", "only 'null'")]
    public void What_the_reader_cannot_take_is_said_with_its_place_and_without_names_of_types(string text, string where, string what)
    {
        var problem = ProblemOf(text);
        Assert.Contains(where, problem, StringComparison.Ordinal);
        Assert.Contains(what, problem, StringComparison.Ordinal);
        Assert.DoesNotContain("HotShop.", problem, StringComparison.Ordinal);
        Assert.DoesNotContain("System.", problem, StringComparison.Ordinal);
    }

    static StudioConfiguration Ours => SomeStudio.Configuration;

    static StudioConfiguration Furnace(Func<ApplianceOptions, ApplianceOptions> change) => SomeStudio.With("furnace-1", change);

    static StudioConfiguration Crown(Func<ChannelOptions, ChannelOptions> change) => SomeStudio.With("furnace-1", "crown", change);

    /// <summary>The crown as a couple whose converter sends °C.</summary>
    static StudioConfiguration Couple(Func<ChannelOptions, ChannelOptions> change) => Crown(c => change(c with { Unit = "Cel", Thermocouple = "K" }));

    static CalibrationOptions Calibrated(params CalibrationPointOptions[] points) => new() { From = "2026-03-01", Points = points };

    static StudioConfiguration Pot(Func<PotOptions, PotOptions> change) => Furnace(a => a with { Pot = change(a.Pot!) });

    static StudioConfiguration Alarm(string kind, AlarmOptions alarm) => Furnace(a => a with { Alarms = new Dictionary<string, AlarmOptions> { [kind] = alarm } });

    public static TheoryData<string, string, string, object> Slips => new()
    {
        { "site", "'My Studio' is no id", "lower-case", Ours with { Site = "My Studio" } },
        { "zone", "'CET time'", "Europe/Berlin", Ours with { Zone = "CET time" } },
        { "currency", "'euro'", "EUR", Ours with { Currency = "euro" } },
        { "units", "'imperial'", "metric, us or both", Ours with { Units = "imperial" } },
        { "http.listen", "'5080'", "127.0.0.1:5080", Ours with { Http = new() { Listen = "5080" } } },
        { "http.listen", "'::1'", "127.0.0.1:5080", Ours with { Http = new() { Listen = "::1" } } },
        { "http.publicAddress", "'studio'", "https", Ours with { Http = Ours.Http with { PublicAddress = "studio" } } },
        { "broker.mode", "'cloud'", "embedded or outside", Ours with { Broker = Ours.Broker with { Mode = "cloud" } } },
        { "broker.prefix", "'#'", "leave it out", Ours with { Broker = Ours.Broker with { Prefix = "#" } } },
        { "broker.devices", "no device has a password", "password file", Ours with { Broker = Ours.Broker with { Listen = "0.0.0.0:1883" } } },
        { "broker.devices[0].appliances", "no appliance 'x'", "name one", Ours with { Broker = Ours.Broker with { Devices = [new() { User = "u", PasswordFile = "p", Appliances = ["x"] }] } } },
        { "broker.host", "no address", "host name", Ours with { Broker = Ours.Broker with { Mode = "outside" } } },
        { "broker.caFile", "no TLS", "broker.tls", Ours with { Broker = Ours.Broker with { Mode = "outside", Host = "h", CaFile = "ca" } } },
        { "store.profile", "'fast'", "memory-card", Ours with { Store = new() { Profile = "fast" } } },
        { "store.rawDays", "1 is out of range", "7 to 3650", Ours with { Store = new() { RawDays = 1 } } },
        { "store.ballastMebibytes", "0 is out of range", "1 to 1024", Ours with { Store = new() { BallastMebibytes = 0 } } },
        { "gas.grossKilowattHoursPerCubicMetre", "38 is out of range", "3 to 36", Ours with { Gas = new() { GrossKilowattHoursPerCubicMetre = 38 } } },
        { "gas.grossHeatingValueUncertaintyPercent", "25 is out of range", "0 to 20", Ours with { Gas = new() { GrossHeatingValueUncertaintyPercent = 25 } } },
        { "gas.lineUncertaintyKelvin", "-1 is out of range", "0 to 40", Ours with { Gas = new() { LineUncertaintyKelvin = -1 } } },
        { "gas.lineUncertaintyMillibar", "500 is out of range", "0 to 200", Ours with { Gas = new() { LineUncertaintyMillibar = 500 } } },
        { "channels[0].class", "0 is out of range", "0.1 to 20", SomeStudio.With("shop", "meter", c => c with { Class = 0 }) },
        { "channels[0].class", "temperature meters nothing", "only a meter", Crown(c => c with { Class = 1 }) },
        { "pot.scaleUncertaintyPercent", "30 is out of range", "0 to 20", Pot(p => p with { ScaleUncertaintyPercent = 30 }) },
        { "gas.base", "'stp'", "iso13443, us or normal", Ours with { Gas = new() { Base = "stp" } } },
        { "prices[0].from", "'1 May'", "YYYY-MM-DD", Ours with { Prices = [new() { From = "1 May", Energy = "gas", PerKilowattHour = 0.1m }] } },
        { "prices[0].energy", "'oil'", "gas or electricity", Ours with { Prices = [new() { From = "2026-01-01", Energy = "oil", PerKilowattHour = 0.1m }] } },
        { "prices[0].perKilowattHour", "11 is no price", "e.g. 0.11", Ours with { Prices = [new() { From = "2026-01-01", Energy = "gas", PerKilowattHour = 11m }] } },
        { "appliances", "there are none", "at least one", Ours with { Appliances = [] } },
        { "appliances[0].id", "'out' is kept", "another id", Furnace(a => a with { Id = "out" }) },
        { "appliances[6].id", "is there twice", "of its own", Ours with { Appliances = [.. Ours.Appliances, Ours.Appliances[2]] } },
        { "appliances[0].kind", "'kiln' is unknown", "furnace, glory-hole", Furnace(a => a with { Kind = "kiln" }) },
        { "appliances[0].mode", "'on' is no mode", "holding", Furnace(a => a with { Mode = "on" }) },
        { "appliances[0].timetable[0].at", "'6 pm'", "HH:MM", Furnace(a => a with { Timetable = [new() { At = "6 pm", Mode = "off" }] }) },
        { "appliances[0].timetable[0].days", "'weekdays'", "mon-fri", Furnace(a => a with { Timetable = [new() { Days = "weekdays", At = "18:00", Mode = "off" }] }) },
        { "appliances[0].timetable[0].mode", "'out'", "holding", Furnace(a => a with { Timetable = [new() { At = "18:00", Mode = "out" }] }) },
        { "channels[0].id", "'log' is kept", "another id", Crown(c => c with { Id = "log" }) },
        { "channels[0].quantity", "'heat' is unknown", "temperature", Crown(c => c with { Quantity = "heat" }) },
        { "channels[0].unit", "'m3/h' is no unit of temperature", "Cel", Crown(c => c with { Unit = "m3/h" }) },
        { "channels[0].unit", "'mV' alone", "thermocouple", Crown(c => c with { Unit = "mV" }) },
        { "channels[0].unit", "'{pulse}' alone", "cubicMetresPerPulse", SomeStudio.With("shop", "meter", c => c with { Unit = "{pulse}" }) },
        { "channels[0].intervalSeconds", "0 is out of range", "0.1 to 86400", Crown(c => c with { IntervalSeconds = 0 }) },
        { "channels[0].reports", "'sometimes'", "periodic, on-change or typed", Crown(c => c with { Reports = "sometimes" }) },
        { "channels[0].counterDigits", "2 is out of range", "3 to 12", SomeStudio.With("shop", "meter", c => c with { CounterDigits = 2 }) },
        { "channels[0].counterMaximumPerHour", "0 is out of range", "0.001", SomeStudio.With("shop", "meter", c => c with { CounterMaximumPerHour = 0 }) },
        { "channels[0].cubicMetresPerPulse", "-1 is out of range", "write a number", SomeStudio.With("shop", "meter", c => c with { CubicMetresPerPulse = -1 }) },
        { "channels[1].nameplateKilowatts", "0 is out of range", "write a number", SomeStudio.With("annealer-1", "relay", c => c with { NameplateKilowatts = 0 }) },
        { "channels[3].thermocouple", "'3' is no type", "B, E, J", SomeStudio.With("furnace-1", "couple", c => c with { Thermocouple = "3" }) },
        { "channels[3].coldJunction", "needs the temperature", "name the channel", SomeStudio.With("furnace-1", "couple", c => c with { ColdJunction = null }) },
        { "channels[3].coldJunction", "no channel 'nobody'", "that is there", SomeStudio.With("furnace-1", "couple", c => c with { ColdJunction = "nobody" }) },
        { "channels[3].coldJunction", "'flame' does not measure", "that does", SomeStudio.With("furnace-1", "couple", c => c with { ColdJunction = "flame" }) },
        { "channels[1].accuracy", "gas-flow has none", "temperatures", SomeStudio.With("furnace-1", "gas-flow", c => c with { Accuracy = new() { Stated = "2 K" } }) },
        { "channels[0].accuracy.tolerance", "'class 2'", "iec-1, iec-2", Couple(c => c with { Accuracy = new() { Tolerance = "class 2" } }) },
        { "channels[0].accuracy.tolerance", "type B has no IEC 60584-1 class 1", "iec-2, iec-3", Couple(c => c with { Thermocouple = "B", Accuracy = new() { Tolerance = "iec-1" } }) },
        { "channels[0].accuracy.tolerance", "needs the type", "thermocouple", Crown(c => c with { Accuracy = new() { Tolerance = "iec-2" } }) },
        { "channels[0].accuracy.inputMicrovolts", "depends on the couple", "thermocouple", Crown(c => c with { Accuracy = new() { InputMicrovolts = 10 } }) },
        { "channels[0].accuracy.inputMicrovolts", "-1 is out of range", "0 to 10000", Couple(c => c with { Accuracy = new() { InputMicrovolts = -1 } }) },
        { "channels[0].accuracy.terminals", "only a thermocouple", "leave it out", Crown(c => c with { Accuracy = new() { Terminals = "1 K" } }) },
        { "channels[0].accuracy.drift", "'3'", "1.2 K", Crown(c => c with { Accuracy = new() { Drift = "3" } }) },
        { "channels[0].accuracy.stated", "'-2 K'", "never below 0", Crown(c => c with { Accuracy = new() { Stated = "-2 K" } }) },
        { "channels[1].calibrations", "gas-flow is not corrected", "temperatures", SomeStudio.With("furnace-1", "gas-flow", c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "1 K" })] }) },
        { "calibrations[0].from", "'1 May'", "YYYY-MM-DD", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "1 K" }) with { From = "1 May" }] }) },
        { "calibrations[1].from", "two calibrations from 2026-03-01", "its own day", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "1 K" }), Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "2 K" })] }) },
        { "calibrations[0].points", "there is none", "at least one", Crown(c => c with { Calibrations = [Calibrated()] }) },
        { "calibrations[0].points[0].reading", "'1100'", "1100 °C or 2012 °F", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100", Correction = "1 K" })] }) },
        { "calibrations[0].points[0]", "neither reference nor correction", "one of them", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C" })] }) },
        { "calibrations[0].points[0]", "both reference and correction", "one of them", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Reference = "1101 °C", Correction = "1 K" })] }) },
        { "calibrations[0].points[0].correction", "'a bit'", "-2.5 K", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "a bit" })] }) },
        { "calibrations[0].points[0]", "a correction of 912 K", "check the units", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "2012 °F", Reference = "2012 °C" })] }) },
        { "calibrations[0].points", "does not rise", "each reading once", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "0 K" }, new CalibrationPointOptions { Reading = "1110 °C", Correction = "-15 K" })] }) },
        { "calibrations[0].uncertainty", "'2 %'", "1.2 K", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "1 K" }) with { Uncertainty = "2 %" }] }) },
        { "calibrations[0].points", "too few for a line", "three comparisons", Crown(c => c with { Calibrations = [Calibrated(new CalibrationPointOptions { Reading = "1100 °C", Correction = "1 K" }) with { ReferenceUncertainty = "1 K" }] }) },
        { "channels[0].topic", "'a/#'", "without # and +", Crown(c => c with { Topic = "a/#" }) },
        { "channels[0].valuePointer", "'sensors.0'", "/sensors/0/t", Crown(c => c with { ValuePointer = "sensors.0" }) },
        { "channels[0].plausibleHigh", "'hot'", "1450 °C", Crown(c => c with { PlausibleHigh = "hot" }) },
        { "channels[0].plausibleHigh", "'3 bar'", "m3/h", SomeStudio.With("annealer-2", "power", c => c with { Quantity = "gas-flow", PlausibleHigh = "3 bar" }) },
        { "channels[0].plausibleLow", "'900 °C' is not below '500 °C'", "lower", Crown(c => c with { PlausibleLow = "900 °C", PlausibleHigh = "500 °C" }) },
        { "pot.diameterCentimetres", "460 is out of range", "10 to 150", Pot(p => p with { DiameterCentimetres = 460 }) },
        { "pot.shape", "'square'", "cylinder, cone or rounded", Pot(p => p with { Shape = "square" }) },
        { "pot.bottomDiameterCentimetres", "needs its bottom", "inner diameter", Pot(p => p with { Shape = "cone" }) },
        { "pot.cornerRadiusCentimetres", "needs the radius", "half the diameter", Pot(p => p with { Shape = "rounded", CornerRadiusCentimetres = 30 }) },
        { "pot.gatherKilograms", "no size of gather", "at least one", Pot(p => p with { GatherKilograms = new Dictionary<string, double>() }) },
        { "pot.gatherKilograms.large", "800 is out of range", "0.01 to 20", Pot(p => p with { GatherKilograms = new Dictionary<string, double> { ["large"] = 800 } }) },
        { "pot.startKilograms", "-5 is out of range", "write a number", Pot(p => p with { StartKilograms = -5 }) },
        { "alarms.fire", "no such kind", "overheat", Alarm("fire", new()) },
        { "alarms.overheat.limit", "not plausible", "is the unit right?", Alarm("overheat", new() { Limit = "2300 °C" }) },
        { "alarms.overheat.limit", "'hot'", "1290 °C", Alarm("overheat", new() { Limit = "hot" }) },
        { "alarms.overheat.priority", "4 is out of range", "1 to 3", Alarm("overheat", new() { Priority = 4 }) },
        { "alarms.lock-out.limit", "has no limit", "leave it out", Alarm("lock-out", new() { Limit = "5 K" }) },
        { "people[0].outlets", "no way", "push", Ours with { People = [new() { Id = "mo", Name = "Mo", Outlets = [] }], Notifications = new() { Order = ["mo"] } } },
        { "people[0].outlets[0].kind", "'pigeon'", "push or mail", Ours with { People = [new() { Id = "mo", Name = "Mo", Outlets = [new() { Kind = "pigeon" }] }], Notifications = new() { Order = ["mo"] } } },
        { "notifications.order", "no person 'nobody'", "people's ids", Ours with { Notifications = new() { Order = ["nobody"] } } },
        { "reports.mailTo[0]", "no person 'mo'", "one of the people", Ours with { Reports = new() { MailTo = ["mo"] } } },
        { "reports.mailTo[0]", "no mail address", "outlet of kind mail", Ours with { People = [new() { Id = "mo", Name = "Mo", Outlets = [new() { Kind = "push", Url = "https://push.example/", Topic = "t" }] }], Notifications = new() { Order = ["mo"] }, Reports = new() { MailTo = ["mo"] } } },
        { "reports.hour", "24", "0 to 23", Ours with { Reports = new() { Hour = 24 } } },
        { "notifications.mail", "no mail server", "host, port", Ours with { People = [new() { Id = "mo", Name = "Mo", Outlets = [new() { Kind = "mail", Address = "mo@studio.example" }] }], Notifications = new() { Order = ["mo"] } } },
        { "notifications.repeatMinutes", "0 is out of range", "1 to 120", Ours with { Notifications = new() { RepeatMinutes = 0 } } },
        { "notifications.pingUrl", "'ping'", "watcher", Ours with { Notifications = new() { PingUrl = "ping" } } },
    };

    [Theory, MemberData(nameof(Slips))]
    public void A_slip_is_named_with_its_place_and_what_to_write(string where, string what, string whatToDo, object configuration)
    {
        var problem = Assert.Single(ConfigurationCheck.Problems((StudioConfiguration)configuration, "hotshop.json"));
        Assert.StartsWith("hotshop.json: ", problem.Where, StringComparison.Ordinal);
        Assert.EndsWith(where, problem.Where, StringComparison.Ordinal);
        Assert.Contains(what, problem.What, StringComparison.Ordinal);
        Assert.Contains(whatToDo, problem.WhatToDo, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.ToString());
    }

    [Fact]
    public void The_studio_of_these_tests_has_no_problem() => Assert.Empty(Problems(Ours));

    [Fact]
    public void All_slips_are_named_at_once() =>
        Assert.Equal(3, Problems(Ours with { Site = "A B", Zone = "Nowhere", Currency = "x" }).Count);

    [Fact]
    public void Bounds_are_converted_from_the_unit_they_are_typed_in()
    {
        var plan = PlanBuilder.Build(SomeStudio.With("annealer-2", "power", c => c with { PlausibleHigh = "9000 W" }), "/");
        Assert.Equal(9, plan.Channels.Find("annealer-2/power")!.PlausibleHigh!, 12);
        plan = PlanBuilder.Build(Crown(c => c with { PlausibleHigh = "2642 °F" }), "/");
        Assert.Equal(1450, plan.Channels.Find("furnace-1/crown")!.PlausibleHigh, 9);
    }

    [Theory, InlineData("daily", 7), InlineData("mon-fri", 5), InlineData("tue,thu,sat", 3), InlineData("sat-mon", 3), InlineData("wed", 1)]
    public void Days_are_read_as_people_write_them(string text, int count) => Assert.Equal(count, Weekdays.Parse(text)!.Count);

    [Theory, InlineData("1290 °C", 1290), InlineData("2354 °F", 1290), InlineData("1563.15 K", 1290)]
    public void A_limit_is_a_number_with_its_unit(string text, double celsius) => Assert.Equal(celsius, Limit.Parse(text)!.Celsius!.Value, 9);
}
