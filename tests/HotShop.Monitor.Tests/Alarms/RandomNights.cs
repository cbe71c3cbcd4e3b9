using FsCheck.Xunit;
using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

/// <summary>What holds in any night, however it goes.</summary>
public class RandomNights
{
    static readonly AlarmEngine Engine = new(TestStudio.Plan);

    static (StudioMemory Memory, List<AlarmTransition> Transitions) Run(int[] night)
    {
        var (memory, now, all) = (Engine.Begin(Story.Start), Story.Start, new List<AlarmTransition>());
        foreach (var number in night)
        {
            if (Script.Step(number, ref now, memory) is not { } step) continue;
            var (next, transitions) = Engine.Step(memory, step);
            memory = next;
            all.AddRange(transitions);
        }
        return (memory, all);
    }

    [Fact] public void The_nights_are_lively_enough_to_mean_something()
    {
        var kinds = new HashSet<(string, AlarmChange)>();
        for (var night = 0; night < 40; night++) foreach (var t in Run([.. Enumerable.Range(night * 1000, 400)]).Transitions) kinds.Add((t.Occurrence.Kind, t.Change));
        Assert.True(kinds.Select(k => k.Item1).Distinct().Count() >= 8, string.Join(' ', kinds));
        Assert.True(kinds.Count >= 24, $"{kinds.Count}: {string.Join(' ', kinds)}");
    }

    [Property(MaxTest = 200, StartSize = 20, EndSize = 400)] public void An_alarm_once_raised_stands_until_it_cleared(int[] night)
    {
        var (memory, transitions) = Run(night);
        foreach (var alarm in transitions.GroupBy(t => t.Occurrence.AlarmId))
        {
            var state = AlarmState.Normal;
            foreach (var t in alarm)
            {
                state = AlarmStates.Next(state, t.Change switch { AlarmChange.Raised => AlarmInput.ConditionTrue, AlarmChange.Cleared => AlarmInput.ConditionFalse, _ => AlarmInput.Acknowledge });
                Assert.Equal(state, t.Occurrence.State);
            }
            Assert.Equal(state, memory.Alarms.Single(a => a.Occurrence?.AlarmId == alarm.Key).State);
        }
    }

    [Property(MaxTest = 200, StartSize = 20, EndSize = 400)] public void No_two_occurrences_share_an_id_and_none_begins_twice(int[] night)
    {
        var raised = Run(night).Transitions.Where(t => t.Change == AlarmChange.Raised).Select(t => t.Occurrence.Id).ToList();
        Assert.Equal(raised.Count, raised.Distinct().Count());
    }

    [Property(MaxTest = 100, StartSize = 20, EndSize = 400)] public void Acknowledging_again_changes_nothing(int[] night)
    {
        var memory = Run(night).Memory;
        foreach (var id in memory.Alarms.Where(a => a.Occurrence is not null).Select(a => a.Occurrence!.Id))
        {
            var once = Engine.Step(memory, new AlarmEvent.Acknowledged(id, "Ida", Story.Start));
            var twice = Engine.Step(once.Memory, new AlarmEvent.Acknowledged(id, "Jon", Story.Start + Duration.FromHours(1)));
            Assert.Empty(twice.Transitions);
            Assert.Same(once.Memory, twice.Memory);
            Assert.Equal(memory.Alarms.Count(a => a.State == AlarmState.Unacknowledged && a.Occurrence!.Id != id), once.Memory.Alarms.Count(a => a.State == AlarmState.Unacknowledged));
        }
    }

    [Property(MaxTest = 100, StartSize = 20, EndSize = 400)] public void The_same_night_again_ends_the_same(int[] night)
    {
        var (first, second) = (Run(night), Run(night));
        Assert.Equal(Script.Told(first.Memory), Script.Told(second.Memory));
        Assert.Equal(first.Transitions, second.Transitions);
    }

    [Property(MaxTest = 100, StartSize = 20, EndSize = 400)] public void A_step_leaves_the_memory_it_began_with_as_it_was(int[] night)
    {
        var memory = Run(night).Memory;
        var before = Script.Told(memory);
        var now = Story.Start + Duration.FromDays(1);
        for (var number = 0; number < 20; number++) if (Script.Step(number, ref now, memory) is { } step) Engine.Step(memory, step);
        Assert.Equal(before, Script.Told(memory));
    }
}
