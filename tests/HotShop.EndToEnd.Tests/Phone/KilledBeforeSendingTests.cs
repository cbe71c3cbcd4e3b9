using System.Text.Json;
using HotShop.EndToEnd.Tests.Kill;
using HotShop.EndToEnd.Tests.Running;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Broker;
using HotShop.Monitor.Tests.Notifications;
using NodaTime;
using NodaTime.Extensions;
using Xunit;

namespace HotShop.EndToEnd.Tests.Phone;

/// <summary>The program in a process of its own, killed when the alarm is stored and no phone has heard of it.</summary>
public sealed class KilledBeforeSendingTests
{
    [Fact]
    public async Task Killed_between_commit_and_send_the_message_still_comes_after_the_restart()
    {
        var folder = Directory.CreateTempSubdirectory("hotshop-killed-").FullName;
        try
        {
            // Nothing listens at the phone's address yet.
            var phone = new Uri($"http://127.0.0.1:{Ports.Free()}/");
            var studio = NightPlan.Configuration(folder, phone, mailPort: Ports.Free()).With("furnace-1",
                furnace => furnace with { Alarms = new Dictionary<string, AlarmOptions> { ["overheat"] = new() { OnDelaySeconds = 2 } } });
            studio = studio with { Notifications = studio.Notifications with { Mail = null }, People = [.. studio.People.Select(p => p with { Outlets = [p.Outlets[0]] })] };
            var file = Path.Combine(folder, "hotshop.json");
            await File.WriteAllTextAsync(file, JsonSerializer.Serialize(studio, ConfigurationFile.Json), TestContext.Current.CancellationToken);

            await using (var doomed = await ServiceProcess.Start(file))
            {
                await Patience.Until(() => doomed.Said.Contains("The broker listens", StringComparison.Ordinal), () => $"the broker listens; it says\n{doomed.Said}");
                await using (var sensors = await Sensors.Connect(studio))
                {
                    var now = new RealClock().GetUtcNow().ToInstant();
                    sensors["furnace-1/crown"] = 1300;
                    await sensors.Measure(now - Duration.FromSeconds(3));
                    await sensors.Measure(now);   // acknowledged: the alarm and its message are committed
                    await doomed.Kill();
                }
                Assert.DoesNotContain("Sent furnace-1.overheat", doomed.Said, StringComparison.Ordinal);
            }

            await using var receiver = await HttpReceiver.Start(phone.Port);
            await using var again = await ServiceProcess.Start(file);
            var call = (await Patience.For(receiver.Received.ReadAsync(TestContext.Current.CancellationToken).AsTask())).Body!;
            Assert.Equal((NightPlan.First, 1), ((string)call["topic"]!, (int)call["sequence"]!));
            Assert.StartsWith("furnace-1.overheat.crown", (string)call["occurrence"]!, StringComparison.Ordinal);
            Assert.Equal(0, await again.Stop());
            Assert.Empty(ServiceLog.Errors(folder));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
