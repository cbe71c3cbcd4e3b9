using Xunit;
using System.Text;
using HotShop.Monitor.Wire;
using NodaTime;
using static HotShop.Monitor.Tests.Wire.SomeChannels;

namespace HotShop.Monitor.Tests.Wire;

public class MessageReaderTests
{
    [Theory, InlineData("1148.6", 1148.6), InlineData(" 1148.6\r\n", 1148.6), InlineData("-3", -3), InlineData("+20", 20), InlineData("1.1486e3", 1148.6), InlineData(".5", .5),
        InlineData("\"1148.6\"", 1148.6), InlineData("{\"value\":1148.6}", 1148.6), InlineData("{\"value\":\"1148.6\"}", 1148.6), InlineData("{\"value\":2100,\"unit\":\"[degF]\",\"rssi\":-71}", 1148.888888888889)]
    public void A_number_is_read_however_a_device_writes_it(string payload, double celsius) => Assert.Equal(celsius, Value("furnace-1/crown", payload), 12);

    [Theory, InlineData("true", 1), InlineData("OFF", 0), InlineData("on", 1), InlineData("0", 0), InlineData("{\"value\":true}", 1), InlineData("{\"value\":\"off\",\"time\":null}", 0), InlineData("{\"value\":1}", 1)]
    public void A_state_is_on_or_off(string payload, double state) => Assert.Equal(state, Value("furnace-1/flame", payload));

    [Theory, InlineData("2"), InlineData("0.4"), InlineData("yes"), InlineData("{\"value\":1,\"unit\":\"Cel\"}"), InlineData("burning")]
    public void A_state_is_nothing_else(string payload) => Assert.Contains("furnace-1/flame: ", Reason(Send("furnace-1/flame", payload)), StringComparison.Ordinal);

    [Fact]
    public void A_time_with_offset_is_kept_to_the_millisecond()
    {
        var reading = Assert.Single(Send("furnace-1/crown", """{"value":1148.6,"unit":"Cel","time":"2026-03-01T02:13:05.120Z"}""").Readings);
        Assert.Equal(Instant.FromUtc(2026, 3, 1, 2, 13, 5) + Duration.FromMilliseconds(120), reading.At);
        Assert.Equal("Cel", reading.Unit);
    }

    [Fact]
    public void One_bad_row_of_a_backlog_costs_only_itself()
    {
        var content = Send("furnace-1/crown", """[{"value":1,"time":"2026-03-01T00:00:00Z"},{"value":"cold","time":"2026-03-01T00:00:10Z"},{"value":3,"time":"2026-03-01T00:00:20Z"}]""");
        Assert.Equal([1.0, 3.0], content.Readings.Select(r => r.Value));
        var refusal = Assert.Single(content.Refusals);
        Assert.Equal(1, refusal.Index);
        Assert.Contains("row 1: 'cold' is no number", refusal.Reason, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("1148,6", "write 1148.6")]
    [InlineData("1,148", "write 1.148 or 1148")]
    [InlineData("1,148.6", "is no number")]
    [InlineData("1e999", "too large")]
    [InlineData("{\"value\":1e999}", "too large")]
    [InlineData("NaN", "there is no value")]
    [InlineData("{\"value\":NaN}", "no JSON from byte 9")]
    [InlineData("∞", "is no number")]
    [InlineData("１１４８", "is no number")]
    [InlineData("0x47", "is no number")]
    [InlineData("1148.6 °C", "a unit goes into an object")]
    [InlineData("true", "is a state")]
    [InlineData("{\"value\":null}", "send nothing while there is no value")]
    [InlineData("{\"value\":[1]}", "the value is an array")]
    [InlineData("{\"temp\":1148}", "there is no 'value'")]
    [InlineData("{\"value\":1,\"timestamp\":\"2026-03-01T02:13:05Z\"}", "'timestamp' is not read: call it 'time'")]
    [InlineData("{\"value\":1,\"Unit\":\"K\"}", "'Unit' is not read: call it 'unit'")]
    [InlineData("{\"value\":1,\"value\":2}", "a key is in it twice")]
    [InlineData("{\"value\":1,\"v\\u0061lue\":2}", "a key is in it twice")]
    [InlineData("{\"value\":1}}", "no JSON")]
    [InlineData("{\"value\":1", "no JSON")]
    [InlineData("{\"value\":1,\"note\":\"\\ud800\"}", "half a character")]
    [InlineData("{\"value\":1,\"unit\":\"m3\"}", "'m3' is a unit of a gas volume, the channel measures temperature: send Cel, [degF], K")]
    [InlineData("{\"value\":1,\"unit\":\"Fahrenheit\"}", "the unit 'Fahrenheit' is unknown")]
    [InlineData("{\"value\":1,\"unit\":7}", "write it in quotes")]
    [InlineData("{\"value\":11.9,\"unit\":\"mV\"}", "has no thermocouple")]
    [InlineData("{\"value\":-300,\"unit\":\"Cel\"}", "below absolute zero")]
    [InlineData("{\"value\":1,\"time\":\"2026-03-01T02:13:05\"}", "no time with offset")]
    [InlineData("{\"value\":1,\"time\":1772331185}", "seconds and milliseconds look alike")]
    [InlineData("[]", "the array is empty")]
    [InlineData("[1148.6]", "row 0: '1148.6' is no object")]
    [InlineData("", "the payload is empty")]
    [InlineData(" \n", "the payload is empty")]
    public void What_cannot_be_read_is_refused_with_what_to_send(string payload, string reason) =>
        Assert.Contains(reason, Reason(Send("furnace-1/crown", payload)), StringComparison.Ordinal);

    [Fact]
    public void A_byte_order_mark_at_the_start_changes_no_value() => Assert.Equal(1148.6, Value("furnace-1/crown", "\uFEFF1148.6"));

    [Fact]
    public void Bytes_that_are_no_text_are_refused() =>
        Assert.Contains("no valid UTF-8", Reason(Read("hotshop/quillmere/furnace-1/crown", [(byte)'1', 0xC3, 0x28])), StringComparison.Ordinal);

    [Fact]
    public void Ten_thousand_brackets_are_refused_without_harm() =>
        Assert.Contains("nested deeper", Reason(Send("furnace-1/crown", new string('[', 10_000) + new string(']', 10_000))), StringComparison.Ordinal);

    [Theory]
    [InlineData("{\"value\":", "ends before its last bracket is closed")]
    [InlineData("{\"value\":1148.6 ", "ends before its last bracket is closed")]
    [InlineData("[1148.6", "it is no JSON from byte 7")]
    public void A_payload_that_was_cut_off_is_called_that_and_not_too_deep(string payload, string what) =>
        Assert.Contains(what, Reason(Send("furnace-1/crown", payload)), StringComparison.Ordinal);

    [Fact]
    public void A_megabyte_is_refused_unread() =>
        Assert.Contains("more than 262144", Reason(Send("furnace-1/crown", "1148.6" + new string(' ', 1 << 20))), StringComparison.Ordinal);

    [Fact]
    public void A_reason_never_carries_a_line_break_or_a_page_of_rubbish()
    {
        var reason = Reason(Send("furnace-1/crown", "x\u001b[31m\n\u202e" + new string('y', 5000)));
        Assert.DoesNotContain(reason, c => char.IsControl(c) || c == '\u202e');
        Assert.True(reason.Length < 250, reason);
    }

    [Theory]
    [InlineData("hotshop/quillmere/furnace-1/crwn", "furnace-1 has crown, ")]
    [InlineData("hotshop/quillmere/furnace-9/crown", "there is no appliance 'furnace-9'")]
    [InlineData("hotshop/elsewhere/furnace-1/crown", "topics of this site begin with 'hotshop/quillmere/'")]
    [InlineData("hotshop/quillmere/furnace-1/crown/extra", "no channel listens to")]
    [InlineData("hotshop/quillmere/log", "no channel listens to")]
    [InlineData("hotshop/quillmere//log", "no channel listens to")]
    [InlineData("hotshop/quillmere/furnace-9/log", "there is no appliance 'furnace-9'")]
    [InlineData("", "no channel listens to")]
    public void A_topic_nobody_listens_to_is_told_what_there_is(string topic, string reason) => Assert.Contains(reason, Reason(Read(topic, "1")), StringComparison.Ordinal);

    [Fact]
    public void A_foreign_bundle_feeds_each_channel_from_its_own_place()
    {
        var content = Read("gadget/7/state", """{"sensors":[{"t":"2100"}],"door/open":false,"when":"2026-03-01t02:13:05+01:00"}""");
        Assert.Empty(content.Refusals);
        Assert.Equal(1148.888888888889, content.Readings[0].Value, 12);
        Assert.Equal(Instant.FromUtc(2026, 3, 1, 1, 13, 5), content.Readings[0].At);
        Assert.Equal(("furnace-1/bundle-door", 0.0), (content.Readings[1].Channel.Id, content.Readings[1].Value));
    }

    [Theory]
    [InlineData("""{"sensors":[{"t":"unavailable"}],"when":"2026-03-01T02:13:05Z"}""", "furnace-1/bundle-t: 'unavailable' says that there is no value")]
    [InlineData("""{"sensors":[{"t":2100}]}""", "nothing at '/when'")]
    [InlineData("""{"sensors":[{"t":2100}],"when":"yesterday"}""", "no time with offset")]
    [InlineData("""{"sensors":{}}""", "nothing at '/sensors/0/t'")]
    [InlineData("21", "reads '/sensors/0/t' out of JSON, but '21' came")]
    public void A_foreign_payload_without_its_value_is_refused_by_the_pointer(string payload, string reason) =>
        Assert.Contains(Read("gadget/7/state", payload).Refusals, r => r.Reason.Contains(reason, StringComparison.Ordinal));

    [Fact]
    public void A_bundle_of_changes_is_whole_without_what_did_not_change() =>
        Assert.Empty(Read("gadget/7/state", """{"sensors":[{"t":2100}],"when":"2026-03-01T02:13:05Z"}""").Refusals);

    [Fact]
    public void Minus_zero_is_stored_as_zero() => Assert.Equal(0L, BitConverter.DoubleToInt64Bits(Value("furnace-1/crown", "-0.0")));

    [Fact]
    public void Every_payload_length_up_to_the_limit_is_read()
    {
        var rows = string.Join(',', Enumerable.Range(0, 3000).Select(i => $$"""{"value":{{i}},"unit":"Cel","time":"2026-03-01T{{i / 3600:00}}:{{i / 60 % 60:00}}:{{i % 60:00}}Z"}"""));
        Assert.Equal(3000, Send("furnace-1/crown", $"[{rows}]").Readings.Count);
        Assert.True(Encoding.UTF8.GetByteCount(rows) < MessageReader.LargestPayloadBytes);
    }
}
