using HotShop.Monitor.Alarms;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover;
using HotShop.Monitor.Notifications;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using Microsoft.Extensions.DependencyInjection;
using NodaTime;

namespace HotShop.Monitor.Tests.Handover;

/// <summary>A studio with all that makes a morning, at a time of the test's choosing; nothing is sent by itself.</summary>
static class MorningStudio
{
    public static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    /// <summary>A furnace with a crown couple and a glory hole; whoever sends nothing is no trouble here.</summary>
    public static StudioConfiguration Small => SomeStudio.Configuration with
    {
        Appliances = [.. SomeStudio.Configuration.Appliances.Where(a => a.Id is "furnace-1" or "glory-hole-1").Select(a => a with
        {
            Channels = [.. a.Channels.Where(c => c.Id is "crown" or "chamber")],
            Alarms = new Dictionary<string, AlarmOptions> { ["silent"] = new() { Enabled = false } },
        })],
    };

    /// <summary>One reading in ten minutes is enough to tell a night's gas.</summary>
    public static StudioConfiguration Sparse => SomeStudio.Configuration with
    {
        Appliances = [.. SomeStudio.Configuration.Appliances.Select(a => a with { Channels = [.. a.Channels.Where(c => a.Id != "shop" || c.Id != "meter").Select(c => c with { IntervalSeconds = 600 })] })],
    };

    public static OpenStudio Open(StudioConfiguration? configuration = null, Instant? now = null) => OpenStudio.Open(configuration, now, services =>
    {
        var plan = (StudioPlan)services.Single(s => s.ServiceType == typeof(StudioPlan)).ImplementationInstance!;
        var clock = (TimeProvider)services.Single(s => s.ServiceType == typeof(TimeProvider)).ImplementationInstance!;
        services.AddAnnealing().AddAlarms().AddNotifications(plan, clock).AddHandover();
    });

    /// <summary>A time in Berlin, in March 2026 where no month is named.</summary>
    public static Instant At(int day, int hour, int minute = 0, int month = 3) => new LocalDateTime(2026, month, day, hour, minute).InZoneLeniently(Berlin).ToInstant();

    public static async Task Log(this OpenStudio studio, string appliance, string entry, Instant at, string? who = null, params (string Key, string Value)[] fields)
    {
        var body = new System.Text.Json.Nodes.JsonObject();
        foreach (var (key, value) in fields) body[key] = value;
        var result = await studio.Logbook.Add(new WireLogEntry(appliance, entry, null, who, at, body), Instant.Max(at, studio.Now), CancellationToken.None);
        if (result.Entry is null) throw new InvalidOperationException(result.Refusal);
    }

    public static Task Mode(this OpenStudio studio, string appliance, string mode, Instant at) => studio.Log(appliance, "mode", at, "Ana", ("mode", mode));

    /// <summary>A glory hole that was worked on a day from ten to half past six.</summary>
    public static async Task Worked(this OpenStudio studio, int day, int month = 3)
    {
        await studio.Mode("glory-hole-1", "working", At(day, 10, 0, month));
        await studio.Mode("glory-hole-1", "off", At(day, 18, 30, month));
    }

    public static Morning Morning(this OpenStudio studio, Instant? at = null) => studio.The<HandoverBook>().Of(at ?? studio.Now);

    public static HandoverWords Words(this OpenStudio studio) => studio.The<HandoverWords>();

    /// <summary>Everything a page would say.</summary>
    public static string Said(this OpenStudio studio, Morning morning) => string.Join('\n', studio.Words().Sections(morning).SelectMany(s => s.Lines.Select(l => $"{s.Id}: {l.Text} {l.More}")));
}
