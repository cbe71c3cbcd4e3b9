using System.Text.Json;
using System.Text.RegularExpressions;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Simulator.Tests.Wire;

/// <summary>The messages of a whole day with a charge, once for all tests of the class.</summary>
public sealed class DayOfMessages
{
    public IReadOnlyList<DeviceMessage> All { get; } = Run.Studio(11).Advance(Run.At(24));
}

public partial class PayloadTests(DayOfMessages day) : IClassFixture<DayOfMessages>
{
    static readonly Dictionary<string, string?> UnitByChannel = new()
    {
        ["furnace-1/crown"] = "mV", ["furnace-1/terminal"] = "Cel", ["furnace-1/setpoint"] = "Cel", ["furnace-1/gas-flow"] = "m3/h",
        ["furnace-1/flame"] = null, ["furnace-1/call-for-heat"] = null, ["furnace-1/lock-out"] = null,
        ["glory-hole-1/chamber"] = "Cel", ["glory-hole-1/gas-flow"] = "m3/h", ["glory-hole-1/door"] = null,
        ["glory-hole-1/flame"] = null, ["glory-hole-1/call-for-heat"] = null, ["glory-hole-1/lock-out"] = null,
        ["annealer-1/chamber"] = "Cel", ["annealer-1/setpoint"] = "Cel", ["annealer-1/relay"] = null,
        ["annealer-2/chamber"] = "Cel", ["annealer-2/setpoint"] = "Cel", ["annealer-2/power"] = "kW",
        ["shop/meter"] = "m3", ["shop/mains"] = null, ["shop/carbon-monoxide"] = "[ppm]", ["shop/combustible-gas"] = "%",
    };

    static readonly string[] Entries = ["gather", "charge", "dip", "ladle-out", "mode"];

    [GeneratedRegex("^hotshop/quillmere/([a-z0-9-]+/[a-z0-9-]+)$")]
    private static partial Regex TopicForm();

    [Fact]
    public void Every_channel_of_the_studio_reports()
    {
        var seen = Readings().Select(m => Name(m)).ToHashSet();
        Assert.Equal(UnitByChannel.Keys.Order(), seen.Order());
    }

    [Fact]
    public void A_reading_carries_a_finite_value_its_unit_and_its_time()
    {
        foreach (var message in Readings())
        {
            using var json = JsonDocument.Parse(message.Payload);
            var unit = UnitByChannel[Name(message)];
            var value = json.RootElement.GetProperty("value");
            if (unit is null) Assert.True(value.ValueKind is JsonValueKind.True or JsonValueKind.False);
            else Assert.True(double.IsFinite(value.GetDouble()));
            Assert.Equal(unit, json.RootElement.TryGetProperty("unit", out var sent) ? sent.GetString() : null);
            Assert.Equal(message.At, Time(json));
            Assert.False(message.Retain);
        }
    }

    [Fact]
    public void A_device_speaks_for_its_own_appliance_and_the_tablet_keeps_the_log()
    {
        foreach (var message in day.All)
        {
            var appliance = Name(message).Split('/')[0];
            Assert.Equal(message.Topic.EndsWith("/log", StringComparison.Ordinal) ? "dev-bench" : $"dev-{appliance}", message.Device);
        }
    }

    [Fact]
    public void A_channel_never_reports_twice_for_one_time() =>
        Assert.DoesNotContain(Readings().GroupBy(m => (m.Topic, m.At)), g => g.Count() > 1);

    [Fact]
    public void Temperatures_and_flows_come_every_ten_seconds_and_states_every_minute()
    {
        foreach (var channel in Readings().GroupBy(Name).Where(c => !c.Key.EndsWith("setpoint", StringComparison.Ordinal)))
        {
            var times = channel.Select(m => m.At).ToArray();
            var longest = times.Zip(times.Skip(1), (a, b) => b - a).Max();
            Assert.Equal(Duration.FromSeconds(UnitByChannel[channel.Key] is null ? 60 : 10), longest);
        }
    }

    [Fact]
    public void An_annealer_reports_a_setpoint_only_while_its_controller_has_one()
    {
        var silent = Run.At(17);        // one o'clock at night would still be on the curve; the programme ends at about six
        var setpoints = Readings().Where(m => Name(m) == "annealer-1/setpoint").Select(m => m.At).ToArray();
        Assert.Contains(setpoints, t => t > silent);
        Assert.DoesNotContain(setpoints, t => t > Run.At(22.2));
        Assert.Contains(Readings(), m => Name(m) == "annealer-1/chamber" && m.At > Run.At(23.5));
    }

    [Fact]
    public void Every_log_entry_has_a_kind_an_id_of_its_own_somebody_and_a_time()
    {
        var ids = new HashSet<string>();
        var kinds = new HashSet<string>();
        foreach (var message in day.All.Where(m => m.Topic.EndsWith("/log", StringComparison.Ordinal)))
        {
            using var json = JsonDocument.Parse(message.Payload);
            var entry = json.RootElement;
            Assert.Contains(entry.GetProperty("entry").GetString(), Entries);
            kinds.Add(entry.GetProperty("entry").GetString()!);
            Assert.True(ids.Add(entry.GetProperty("id").GetString()!));
            Assert.NotEmpty(entry.GetProperty("who").GetString()!);
            Assert.InRange((message.At - Time(json)).TotalSeconds, 0, 160);
        }

        Assert.Superset(new HashSet<string> { "gather", "charge", "dip", "mode" }, kinds);
    }

    [Fact]
    public void The_crown_couple_in_millivolts_tells_the_crowns_temperature()
    {
        var couple = Physics.Thermometry.Thermocouple.OfType(Physics.Thermometry.ThermocoupleType.S);
        var crown = Value(Readings().Last(m => Name(m) == "furnace-1/crown"));
        var terminal = Value(Readings().Last(m => Name(m) == "furnace-1/terminal"));
        Assert.Equal(1150, couple.JunctionCelsius(crown, terminal)!.Value, 6.0);
    }

    IEnumerable<DeviceMessage> Readings() => day.All.Where(m => !m.Topic.EndsWith("/log", StringComparison.Ordinal));

    static string Name(DeviceMessage message)
    {
        var match = TopicForm().Match(message.Topic);
        Assert.True(match.Success, message.Topic);
        return match.Groups[1].Value;
    }

    static double Value(DeviceMessage message)
    {
        using var json = JsonDocument.Parse(message.Payload);
        return json.RootElement.GetProperty("value").GetDouble();
    }

    static Instant Time(JsonDocument json) => InstantPattern.ExtendedIso.Parse(json.RootElement.GetProperty("time").GetString()!).Value;
}
