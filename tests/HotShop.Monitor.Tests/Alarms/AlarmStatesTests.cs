using HotShop.Monitor.Alarms;
using static HotShop.Monitor.Alarms.AlarmInput;
using static HotShop.Monitor.Alarms.AlarmState;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

// States and transitions of ANSI/ISA-18.2-2016 (A to D), from memory and secondary texts; in agreement with OPC 10000-9.
public class AlarmStatesTests
{
    static AlarmState After(params AlarmInput[] inputs) => inputs.Aggregate(Normal, AlarmStates.Next);

    [Fact] public void A_condition_makes_an_alarm_that_wants_a_person() => Assert.Equal(Unacknowledged, After(ConditionTrue));
    [Fact] public void Somebody_having_it_does_not_make_it_good() => Assert.Equal(Acknowledged, After(ConditionTrue, Acknowledge));
    [Fact] public void An_alarm_that_clears_by_itself_still_wants_a_person() => Assert.Equal(ReturnedUnacknowledged, After(ConditionTrue, ConditionFalse));
    [Fact] public void Seen_and_over_is_normal_whichever_came_first()
    {
        Assert.Equal(Normal, After(ConditionTrue, Acknowledge, ConditionFalse));
        Assert.Equal(Normal, After(ConditionTrue, ConditionFalse, Acknowledge));
    }

    [Fact] public void It_rings_again_when_the_condition_comes_back_before_anybody_came() =>
        Assert.Equal(Unacknowledged, After(ConditionTrue, ConditionFalse, ConditionTrue));

    [Fact] public void Acknowledging_twice_is_acknowledging_once() => Assert.Equal(After(ConditionTrue, Acknowledge), After(ConditionTrue, Acknowledge, Acknowledge));
    [Fact] public void Acknowledging_nothing_changes_nothing() => Assert.Equal(Normal, After(Acknowledge));
}
