using Xunit;
using NodaTime;
using static HotShop.Monitor.Tests.Wire.SomeChannels;

namespace HotShop.Monitor.Tests.Wire;

public class LogEntryTests
{
    const string Log = "hotshop/quillmere/furnace-1/log";

    [Theory]
    [InlineData("""{"entry":"gather","size":"medium","count":3}""")]
    [InlineData("""{"entry":"gather","massKg":0.42}""")]
    [InlineData("""{"entry":"tally","gathers":{"small":12,"medium":5},"from":"2026-03-01T08:00:00Z","to":"2026-03-01T12:00:00Z"}""")]
    [InlineData("""{"entry":"charge","material":"cullet","mass":55,"unit":"[lb_av]"}""")]
    [InlineData("""{"entry":"dip","glassDepth":31.5,"unit":"cm"}""")]
    [InlineData("""{"entry":"dip","rimToGlass":4,"unit":"[in_i]"}""")]
    [InlineData("""{"entry":"ladle-out","massKg":12}""")]
    [InlineData("""{"entry":"returned-glass","mass":2,"unit":"kg"}""")]
    [InlineData("""{"entry":"mode","mode":"holding"}""")]
    [InlineData("""{"entry":"meter-reading","reading":48210.4,"unit":"m3"}""")]
    [InlineData("""{"entry":"meter-reading","reading":0,"unit":"kW.h"}""")]
    [InlineData("""{"entry":"pot-changed"}""")]
    [InlineData("""{"entry":"calibration"}""")]
    [InlineData("""{"entry":"repair","text":"new door brick"}""")]
    [InlineData("""{"entry":"note","text":"crown hums"}""")]
    [InlineData("""{"entry":"correction","of":"3f2a","count":2}""")]
    public void Each_kind_of_entry_is_read(string payload)
    {
        var content = Read(Log, payload);
        Assert.Empty(content.Refusals);
        Assert.NotNull(content.Entry);
        Assert.Equal("furnace-1", content.Entry.Appliance);
        Assert.Contains($"\"{content.Entry.Entry}\"", payload, StringComparison.Ordinal);
    }

    [Fact]
    public void Who_when_and_id_are_taken_out_of_the_fields()
    {
        var entry = Read(Log, """{"entry":"gather","id":"a1","who":"Wren","time":"2026-03-01T09:30:00+01:00","size":"small","count":2}""").Entry!;
        Assert.Equal(("a1", "Wren", Instant.FromUtc(2026, 3, 1, 8, 30)), (entry.Id, entry.Who, entry.At));
        Assert.Equal(["size", "count"], entry.Fields.Select(f => f.Key));
        Assert.Equal(2, entry.Fields["count"]!.GetValue<int>());
    }

    [Theory]
    [InlineData("""{"size":"medium"}""", "'entry' is missing")]
    [InlineData("""{"entry":"gathr","size":"medium"}""", "'gathr' is no entry: write one of gather, tally")]
    [InlineData("""{"entry":"gather"}""", "needs its size")]
    [InlineData("""{"entry":"gather","size":"medium","count":0}""", "whole number from 1")]
    [InlineData("""{"entry":"gather","size":"medium","count":1.5}""", "whole number from 1")]
    [InlineData("""{"entry":"gather","size":"medium","count":"3"}""", "whole number from 1")]
    [InlineData("""{"entry":"gather","massKg":-1}""", "above 0")]
    [InlineData("""{"entry":"gather","massKg":1e999}""", "write a number")]
    [InlineData("""{"entry":"gather","massKg":null}""", "'massKg' is missing")]
    [InlineData("""{"entry":"tally","gathers":{}}""", "gathers by size")]
    [InlineData("""{"entry":"tally","gathers":{"small":-2}}""", "'gathers.small'")]
    [InlineData("""{"entry":"tally","gathers":{"small":2},"from":"2026-03-01T09:00:00Z","to":"2026-03-01T08:00:00Z"}""", "ends before it begins")]
    [InlineData("""{"entry":"charge","mass":25,"unit":"kg"}""", "needs its material")]
    [InlineData("""{"entry":"charge","material":"cullet","mass":25}""", "has no unit")]
    [InlineData("""{"entry":"charge","material":"cullet","mass":25,"unit":"cm"}""", "'cm' is no unit for 'mass': write kg")]
    [InlineData("""{"entry":"dip","glassDepth":30,"rimToGlass":10,"unit":"cm"}""", "either glassDepth or rimToGlass")]
    [InlineData("""{"entry":"dip","unit":"cm"}""", "either glassDepth or rimToGlass")]
    [InlineData("""{"entry":"mode"}""", "the mode is missing")]
    [InlineData("""{"entry":"note","text":" "}""", "the note is empty")]
    [InlineData("""{"entry":"note","text":"x","depth":1e999}""", "too large")]
    [InlineData("""{"entry":"correction"}""", "needs the id")]
    [InlineData("""{"entry":"gather","size":"small","time":"noon"}""", "no time with offset")]
    [InlineData("""{"entry":"gather","size":"small","who":5}""", "write it in quotes")]
    [InlineData("""{"entry":"gather","entry":"dip"}""", "twice")]
    [InlineData("""[{"entry":"gather","size":"small"}]""", "no object")]
    [InlineData("3", "no object")]
    [InlineData("gather", "cannot be read")]
    public void A_wrong_entry_is_refused_with_what_to_send(string payload, string reason) =>
        Assert.Contains(reason, Reason(Read(Log, payload)), StringComparison.Ordinal);

    [Fact]
    public void A_retained_gather_without_id_is_not_counted_again_at_every_connection() =>
        Assert.Contains("has no id", Reason(Read(Log, """{"entry":"gather","size":"small"}""", retained: true)), StringComparison.Ordinal);

    [Fact]
    public void A_retained_gather_with_id_is_passed_on() =>
        Assert.Equal("a1", Read(Log, """{"entry":"gather","id":"a1","size":"small"}""", retained: true).Entry?.Id);
}
