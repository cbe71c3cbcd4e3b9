using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Alarms.Words;
using HotShop.Monitor.Configuration;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Alarms;

public class WordingTests
{
    static readonly DateTimeZone Berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    static IEnumerable<(AlarmDefinition Definition, AlarmWords Words)> All()
    {
        string?[] details = [null, Say.SinceStart + "70 s", "1820 °C", Say.Flow(123.4), Say.Temperature(495), "the disk is full: " + new string('x', 300)];
        foreach (var definition in AlarmDefinitions.Of(TestStudio.Plan, AlarmPace.Real))
            foreach (var detail in details)
                yield return (definition, Wording.Of(definition, new Finding(Verdict.Wrong, -1234.5, Detail: detail), Story.Start, Berlin));
    }

    [Fact] public void What_goes_to_a_phone_fits_its_screen()
    {
        foreach (var (definition, words) in All())
        {
            var occurrence = new AlarmOccurrence("x", definition.Id, definition.Appliance, null, definition.Kind, 1, AlarmState.Unacknowledged, Story.Start, null, null, null, words, null, null, null);
            var message = Wording.Message(occurrence, Berlin);
            Assert.InRange(message.Length, 40, 240);
            Assert.Contains("since 02:00", message, StringComparison.Ordinal);
            Assert.EndsWith(words.FirstStep, message, StringComparison.Ordinal);
        }
    }

    [Fact] public void Nobody_is_told_to_relight_or_that_anything_is_safe()
    {
        foreach (var (definition, words) in All())
        {
            var told = $"{words.Sentence} {words.Consequence} {words.FirstStep}";
            Assert.DoesNotContain("relight", told, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("restart", told, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain(" is safe", $"{told} {words.Caution}", StringComparison.OrdinalIgnoreCase);
            Assert.Contains("no safety device", words.Caution, StringComparison.Ordinal);
            Assert.DoesNotContain('-', Wording.NameOf(definition.Kind));
        }
    }

    [Fact] public void Whoever_may_meet_gas_is_told_what_to_do_when_it_smells()
    {
        string[] burners = [AlarmKinds.FlameFailure, AlarmKinds.FallingWithGas, AlarmKinds.LockOut, AlarmKinds.Overheat, AlarmKinds.MainsLost];
        foreach (var (_, words) in All().Where(a => burners.Contains(a.Definition.Kind) && a.Definition.Appliance != "annealer-1"))
            Assert.Contains("smell gas: touch no switch, get everybody out, call from outside", words.Caution, StringComparison.Ordinal);
    }

    [Fact] public void Times_are_those_of_the_studio_s_clock_in_summer_too() =>
        Assert.Equal("04:30", Say.Clock(Instant.FromUtc(2026, 7, 1, 2, 30), Berlin));

    // 1 °C is 1.8 °F, 0 °C is 32 °F; 1 ft³ is 0.0283168466 m³ (exact: 0.3048³).
    [Fact] public void Both_scales_are_told()
    {
        Assert.Equal("1290 °C (2354 °F)", Say.Temperature(1290));
        Assert.Equal("10 °C (18 °F)", Say.Difference(10));
        Assert.Equal("0 °C (32 °F)", Say.Temperature(-0.2));
        Assert.Equal("2.8 m³/h, 100 ft³/h", Say.Flow(2.83168466));
    }
}
