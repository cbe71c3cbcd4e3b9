using HotShop.Monitor.Store;
using HotShop.Simulator;
using HotShop.Simulator.Faults;
using NodaTime;

namespace HotShop.Evaluation.Cards;

/// <summary>
/// Weeks in which nothing goes wrong must wake nobody: work, evening shutdowns, free days, and every third day a cold charge, a burner that
/// cycles and a door held open. A deaf service would pass that, so the furnace loses its flame afterwards: that must call.
/// </summary>
static class QuietCard
{
    const int SampleSeconds = 30, StepSeconds = 10;
    static readonly Duration Afterwards = Duration.FromHours(3), FlameOutAfter = Duration.FromHours(2), FlameOutFor = Duration.FromMinutes(35);

    public static readonly Card Card = new("quiet", "days without faults: does the service leave people alone?", UsualCount: 3, UsualDays: 30, Judge);

    sealed record Outcome(int Messages, long Refused, long Late, IReadOnlyList<Held> Alarms, IReadOnlyList<Call> Calls, bool RangAfterwards);

    static async Task<IReadOnlyList<Measure>> Judge(Request request, TextWriter lines)
    {
        var outcomes = new List<Outcome>();
        foreach (var seed in request.Seeds)
        {
            var outcome = await Live(seed, request.Days);
            outcomes.Add(outcome);
            await lines.WriteLineAsync($"seed {seed}: {outcome.Messages} messages, {outcome.Alarms.Count} alarms shown, {outcome.Calls.Count} calls; {(outcome.RangAfterwards ? "rang" : "DID NOT RING")} when the flame went out afterwards");
            foreach (var alarm in outcome.Alarms.GroupBy(a => a.Alarm))
                await lines.WriteLineAsync($"  {alarm.Key}, priority {alarm.First().Priority}: {alarm.Count()} times, first {alarm.First().Since}: {alarm.First().Sentence}");
            foreach (var call in outcome.Calls) await lines.WriteLineAsync($"  call {call.At} to {call.Person}: {call.Sentence}");
        }
        return
        [
            Measure.AtMost("calls to people in days without faults", outcomes.Sum(o => o.Calls.Count), "1", 0),
            Measure.AtLeast("seeds that ring when a flame goes out afterwards, share", outcomes.Average(o => o.RangAfterwards ? 1.0 : 0), "1", 1),
            Measure.Reported("alarms shown without a call, a day", (double)outcomes.Sum(o => o.Alarms.Count) / request.Count / request.Days, "1/d"),
            Measure.AtMost("messages refused", outcomes.Sum(o => o.Refused), "1", 0),
            Measure.AtMost("readings counted as late", outcomes.Sum(o => o.Late), "1", 0),
            Measure.Reported("messages taken", outcomes.Sum(o => (double)o.Messages), "1"),
        ];
    }

    static async Task<Outcome> Live(int seed, int days)
    {
        var end = Duration.FromDays(days);
        var studio = Days.Studio(seed, SampleSeconds, [.. NormalLife(days), new FaultOrder(FaultKind.FlameOutWithGas, Quillmere.Furnace, end + FlameOutAfter, FlameOutFor)]);
        await using var service = ServiceUnderTest.Start(studio.Now, SampleSeconds);
        var store = service.The<IStoreReader>();
        var start = studio.Now;
        var messages = await Live(service, studio, start + end);
        var quiet = new Outcome(messages, service.Counts.GetValueOrDefault(Counters.Refused), service.Counts.GetValueOrDefault(Counters.Late), CallBook.Alarms(store), CallBook.Calls(store), RangAfterwards: false);
        await Live(service, studio, start + end + Afterwards);
        if (service.Errors > 0) throw new InvalidOperationException($"seed {seed}: the service logged errors");
        return quiet with { RangAfterwards = CallBook.Calls(store).Any(c => c.At > start + end + FlameOutAfter && c.Occurrence.StartsWith($"{Quillmere.Furnace}.", StringComparison.Ordinal)) };
    }

    static async Task<int> Live(ServiceUnderTest service, SimulatedStudio studio, Instant end)
    {
        var messages = 0;
        for (var at = studio.Now + Duration.FromSeconds(StepSeconds); at <= end; at += Duration.FromSeconds(StepSeconds))
        {
            var sent = studio.Advance(at);
            messages += sent.Count;
            await service.Live(sent, at);
        }
        return messages;
    }

    /// <summary>Every third day, in working hours where the studio works then: what happens in any shop.</summary>
    static IEnumerable<FaultOrder> NormalLife(int days)
    {
        for (var day = 0; day < days; day += 3)
        {
            var morning = Duration.FromDays(day);
            yield return new(FaultKind.ColdCharge, Quillmere.Furnace, morning + Duration.FromHours(2), Duration.FromMinutes(5));
            yield return new(FaultKind.DoorLeftOpen, Quillmere.GloryHole, morning + Duration.FromHours(3), Duration.FromMinutes(20));
            yield return new(FaultKind.BurnerCycling, Quillmere.Furnace, morning + Duration.FromHours(4), Duration.FromMinutes(180));
        }
    }
}
