using System.Text;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using NodaTime;
using Xunit;
using static HotShop.Monitor.Tests.Support.Times;

namespace HotShop.Monitor.Tests.Logbook;

/// <summary>A pedal under the bench, and devices that send log entries without an id.</summary>
public sealed class ButtonTests : IAsyncDisposable
{
    static readonly ButtonOptions Pedal = new() { Id = "pedal", Appliance = "furnace-1", Size = "medium" };
    static readonly ButtonOptions Puck = new() { Id = "puck", Appliance = "furnace-1", Size = "large", Count = 2, Who = "Mo", Topic = "puck/3", ValuePointer = "/action", Pressed = ["single"], SettleSeconds = 2 };

    readonly OpenStudio studio = OpenStudio.Open(SomeStudio.Configuration with { Buttons = [Pedal, Puck] });

    public ValueTask DisposeAsync() => studio.DisposeAsync();

    Task Send(string topic, string payload, ushort? packet = null, bool again = false, string sender = "pedal-1") => studio.The<IIntake>().Accept(
        new IncomingMessage(topic, Encoding.UTF8.GetBytes(payload), Retained: false, Redelivered: again, studio.Now, sender) { PacketNumber = packet }, default);

    IReadOnlyList<LogEntry> Kept => studio.Logbook.InForce("furnace-1", OpenStudio.Start - Days(10), OpenStudio.Start + Days(10));

    [Fact]
    public async Task A_press_of_the_pedal_is_one_gather_and_letting_go_is_nothing()
    {
        foreach (var payload in new[] { "1", "0" })
        {
            await Send("hotshop/quillmere/furnace-1/pedal", payload);
            studio.Now += Seconds(3);
        }
        var entry = Assert.Single(Kept);
        Assert.Equal(("gather", "medium", 1.0), (entry.Entry, entry.Fields["size"]!.GetValue<string>(), entry.Fields["count"]!.GetValue<double>()));
        Assert.Empty(studio.Refused);
    }

    [Fact]
    public async Task A_bouncing_contact_counts_once_and_a_second_press_counts_again()
    {
        foreach (var pause in new[] { 0.0, 0.05, 0.3, 1.5, 0.02 })
        {
            studio.Now += Seconds(pause);
            await Send("hotshop/quillmere/furnace-1/pedal", "1");
        }
        Assert.Equal(2, Kept.Count);
    }

    [Fact]
    public async Task A_bought_button_is_read_by_its_own_words_and_logs_for_its_person()
    {
        await Send("puck/3", """{"action":"single","battery":88}""");
        studio.Now += Seconds(10);
        await Send("puck/3", """{"action":"","battery":88}""");
        await Send("puck/3", """{"battery":87}""");
        await Send("puck/3", """{"action":"hold"}""");
        var entry = Assert.Single(Kept);
        Assert.Equal(("large", 2.0, "Mo"), (entry.Fields["size"]!.GetValue<string>(), entry.Fields["count"]!.GetValue<double>(), entry.Who));
        Assert.Empty(studio.Refused);
    }

    [Fact]
    public async Task A_press_that_comes_again_because_its_acknowledgement_was_lost_counts_once_even_after_a_restart()
    {
        await Send("hotshop/quillmere/furnace-1/pedal", "1", packet: 7);
        await studio.Restart();
        studio.Now += Minutes(5);
        await Send("hotshop/quillmere/furnace-1/pedal", "1", packet: 7, again: true);
        Assert.Single(Kept);
        // The next press has the next number, and is lost on its first way: its repetition is all there is of it.
        await Send("hotshop/quillmere/furnace-1/pedal", "1", packet: 8, again: true);
        Assert.Equal(2, Kept.Count);
    }

    [Fact]
    public async Task An_entry_without_an_id_counts_once_when_it_is_delivered_twice_and_twice_when_it_is_sent_twice()
    {
        const string gather = """{"entry":"gather","size":"medium"}""";
        await Send("hotshop/quillmere/furnace-1/log", gather, packet: 1);
        await Send("hotshop/quillmere/furnace-1/log", gather, packet: 1, again: true);
        await Send("hotshop/quillmere/furnace-1/log", gather, packet: 2);
        Assert.Equal(2, Kept.Count);
        // Another device may number its messages alike.
        await Send("hotshop/quillmere/furnace-1/log", gather, packet: 2, again: true, sender: "tablet-2");
        Assert.Equal(3, Kept.Count);
    }

    [Fact]
    public async Task An_entry_with_its_own_time_is_the_same_entry_however_it_comes()
    {
        const string gather = """{"entry":"gather","size":"medium","time":"2026-03-02T07:59:30Z"}""";
        await Send("hotshop/quillmere/furnace-1/log", gather, packet: 1);
        await Send("hotshop/quillmere/furnace-1/log", gather, packet: 9);
        await Send("hotshop/quillmere/furnace-1/log", gather.Replace("30Z", "31Z", StringComparison.Ordinal), packet: 10);
        Assert.Equal(2, Kept.Count);
    }

    [Fact]
    public async Task A_press_that_the_broker_kept_is_refused_as_it_may_be_an_old_one()
    {
        await studio.Send("furnace-1/pedal", "1", retained: true);
        Assert.Empty(Kept);
        Assert.Contains("RETAIN", Assert.Single(studio.Refused).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_button_whose_press_the_logbook_would_refuse_is_found_by_the_check()
    {
        string Problem(ButtonOptions button, params ButtonOptions[] others) => string.Join('\n', ConfigurationCheck.Problems(SomeStudio.Configuration with { Buttons = [button, .. others] }, "hotshop.json"));
        Assert.Equal("", Problem(Pedal, Puck, new() { Id = "work", Appliance = "glory-hole-1", Entry = "mode", Mode = "working" }));
        Assert.Contains("'huge' is no size", Problem(Pedal with { Size = "huge" }), StringComparison.Ordinal);
        Assert.Contains("no pot", Problem(Pedal with { Appliance = "annealer-1" }), StringComparison.Ordinal);
        Assert.Contains("has a channel or a button already", Problem(Pedal with { Topic = "hotshop/quillmere/furnace-1/crown" }), StringComparison.Ordinal);
        Assert.Contains("has a channel or a button already", Problem(Pedal, Pedal with { Id = "pedal-2", Topic = "hotshop/quillmere/furnace-1/pedal" }), StringComparison.Ordinal);
        Assert.Contains("is nothing a button can log", Problem(Pedal with { Entry = "charge" }), StringComparison.Ordinal);
    }
}
