using FsCheck.Xunit;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>A service that is killed and started again tells the same alarms as one that was never stopped. Silence is left out: it has its grace.</summary>
public class RestartTests
{
    static async Task<(string Told, int Count)> Night(int[] night, Func<int, bool> restartsBefore, Func<int, bool> failsAt)
    {
        using var studio = new DeskStudio();
        var now = Story.Start;
        for (var i = 0; i < night.Length; i++)
        {
            if (restartsBefore(i)) studio.Restart();
            if (Script.Step(night[i], ref now, studio.Desk.Memory) is not { } step) continue;
            studio.Pass((now - studio.Now).TotalSeconds);
            if (failsAt(i)) await Fail(studio, step);
            await Do(studio, step);
        }
        var loud = studio.Told.Where(t => t.Occurrence.Kind != "silent").ToList();
        return (string.Join('\n', loud.Select(t => $"{t.Change} {t.Occurrence.Id} at {t.At} {t.Occurrence.State} {t.Occurrence.Words.Sentence}")), loud.Count);
    }

    static Task Do(DeskStudio studio, AlarmEvent step) => step switch
    {
        AlarmEvent.Sample sample => studio.Send(sample.Channel, sample.Value, ageSeconds: (sample.ArrivedAt - sample.At).TotalSeconds),
        AlarmEvent.ModeSet set => Mode(studio, set),
        AlarmEvent.PartReported report => Part(studio, report),
        AlarmEvent.Acknowledged act => studio.Desk.Acknowledge(act.OccurrenceId, act.Who, CancellationToken.None),
        _ => studio.Tick(),
    };

    static Task Mode(DeskStudio studio, AlarmEvent.ModeSet set)
    {
        studio.SetMode(set.Appliance, set.Mode.Mode);
        return studio.Tick();
    }

    static Task Part(DeskStudio studio, AlarmEvent.PartReported report)
    {
        studio.Health.Report(report.Part.Part, report.Part.IsWorking, report.Part.Detail, studio.Now);
        return studio.Tick();
    }

    static async Task Fail(DeskStudio studio, AlarmEvent step)
    {
        if (step is not (AlarmEvent.Sample or AlarmEvent.Tick)) return;
        var memory = studio.Desk.Memory;
        studio.Store.IsFull = true;
        await Assert.ThrowsAsync<IOException>(() => Do(studio, step));
        studio.Store.IsFull = false;
        Assert.Same(memory, studio.Desk.Memory);
    }

    [Property(MaxTest = 25, StartSize = 100, EndSize = 400)] public async Task Restarts_change_no_alarm(int[] night, byte rhythm) =>
        Assert.Equal((await Night(night, _ => false, _ => false)).Told, (await Night(night, i => i % (rhythm % 7 + 1) == 0, _ => false)).Told);

    [Property(MaxTest = 25, StartSize = 100, EndSize = 400)] public async Task Commits_that_fail_and_are_done_again_change_no_alarm(int[] night, byte rhythm) =>
        Assert.Equal((await Night(night, _ => false, _ => false)).Told, (await Night(night, _ => false, i => i % (rhythm % 5 + 1) == 0)).Told);

    [Fact] public async Task There_is_something_to_compare() =>
        Assert.InRange((await Night([.. Enumerable.Range(0, 400)], _ => false, _ => false)).Count, 20, 1000);
}
