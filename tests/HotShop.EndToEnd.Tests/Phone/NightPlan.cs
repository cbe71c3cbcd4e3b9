using System.Reflection;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor;
using HotShop.Monitor.Configuration;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>The demo's studio, with receivers of ours for phones and one reading a minute from every sensor.</summary>
static class NightPlan
{
    public const string First = "night-phone-1", Second = "night-phone-2";

    public static StudioConfiguration Configuration(string folder, Uri push, int mailPort)
    {
        using var reader = new StreamReader(typeof(MonitorHost).Assembly.GetManifestResourceStream("HotShop.Monitor.Demo.quillmere.jsonc")!);
        var written = ConfigurationFile.Parse(reader.ReadToEnd(), "quillmere.jsonc");
        var http = $"127.0.0.1:{Ports.Free()}";
        return written with
        {
            DataDirectory = folder,
            Http = written.Http with { Listen = http, PublicAddress = $"http://{http}" },
            Broker = written.Broker with { Listen = $"127.0.0.1:{Ports.Free()}" },
            Store = written.Store with { BallastMebibytes = 1 },
            Appliances = [.. written.Appliances.Select(EveryMinute)],
            People = [Person(First, push), Person(Second, push)],
            Notifications = written.Notifications with { Mail = new MailOptions { Host = "127.0.0.1", Port = mailPort, Security = "none", From = "night@quillmere.example" } },
        };
    }

    public static StudioPlan Plan(StudioConfiguration configuration)
    {
        Assert.Empty(ConfigurationCheck.Problems(configuration, "quillmere.jsonc"));
        return PlanBuilder.Build(configuration, configuration.DataDirectory);
    }

    /// <summary>One appliance changed.</summary>
    public static StudioConfiguration With(this StudioConfiguration studio, string appliance, Func<ApplianceOptions, ApplianceOptions> change) =>
        studio with { Appliances = [.. studio.Appliances.Select(a => a.Id == appliance ? change(a) : a)] };

    static PersonOptions Person(string id, Uri push) => new()
    {
        Id = id, Name = id.Replace('-', ' '),
        Outlets = [new OutletOptions { Kind = "push", Url = push.ToString(), Topic = id }, new OutletOptions { Kind = "mail", Address = $"{id}@quillmere.example" }],
    };

    /// <summary>The glory hole works; the furnace's couple sends °C, so that a test can say how hot it is.</summary>
    static ApplianceOptions EveryMinute(ApplianceOptions appliance) => appliance with
    {
        Mode = appliance.Kind == "glory-hole" ? "working" : appliance.Mode,
        Channels = [.. appliance.Channels.Where(c => c.Id != "terminal").Select(c => c with { IntervalSeconds = 60, Thermocouple = null, Unit = null, ColdJunction = null, Accuracy = null })],
    };
}
