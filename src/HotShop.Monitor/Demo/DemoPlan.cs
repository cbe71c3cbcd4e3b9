using System.Net;
using System.Net.Sockets;
using System.Reflection;
using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Demo;

/// <summary>The invented studio's configuration, fitted to a port, a folder and a speed.</summary>
static class DemoPlan
{
    public const string PhonePath = "/demo/phone";

    public static StudioPlan Make(DemoChoices choices, string dataDirectory)
    {
        using var reader = new StreamReader(Assembly.GetExecutingAssembly().GetManifestResourceStream("HotShop.Monitor.Demo.quillmere.jsonc")!);
        var written = ConfigurationFile.Parse(reader.ReadToEnd(), "quillmere.jsonc");
        var configuration = written with
        {
            DataDirectory = dataDirectory,
            Http = written.Http with { Listen = $"127.0.0.1:{choices.Port}", PublicAddress = $"http://127.0.0.1:{choices.Port}" },
            Broker = written.Broker with { Listen = $"127.0.0.1:{FreePort()}" },
            Appliances = [.. written.Appliances.Select(a => a with { Channels = [.. a.Channels.Select(c => c with { IntervalSeconds = Math.Max(c.IntervalSeconds, ExpectedSeconds(choices.Speed)) })] })],
            People = [.. written.People.Select(p => p with { Outlets = [.. p.Outlets.Select(o => o with { Url = $"http://127.0.0.1:{choices.Port}{PhonePath}" })] })],
        };
        var problems = ConfigurationCheck.Problems(configuration, "quillmere.jsonc");
        return problems.Count == 0 ? PlanBuilder.Build(configuration, dataDirectory) : throw new ConfigurationException(problems);
    }

    /// <summary>Seconds of the studio between two samples of a sensor.</summary>
    public static int SampleSeconds(double speed) => (int)Math.Clamp(speed / 10, 10, 60);

    /// <summary>
    /// What the service is told to expect. The network takes real time: half a second of it is minutes in a fast studio,
    /// and must look neither late nor silent.
    /// </summary>
    public static double ExpectedSeconds(double speed) => Math.Max(SampleSeconds(speed), speed / 2);

    /// <summary>
    /// Eight in the morning of the last working day (Tuesday to Saturday): people have just come. Kept data go on after their last reading:
    /// a studio that lived the same hours twice would contradict itself.
    /// </summary>
    /// <param name="newestKept">The last reading in the folder; null in a new one.</param>
    public static Instant Start(Instant now, DateTimeZone zone, Instant? newestKept)
    {
        if (newestKept is { } newest) return newest + Duration.FromMinutes(1);
        var day = now.InZone(zone).Date;
        while (day.DayOfWeek is IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday) day = day.PlusDays(-1);
        return day.At(new LocalTime(8, 0)).InZoneLeniently(zone).ToInstant();
    }

    static int FreePort()
    {
        using var probe = new TcpListener(IPAddress.Loopback, 0);
        probe.Start();
        return ((IPEndPoint)probe.LocalEndpoint).Port;
    }
}
