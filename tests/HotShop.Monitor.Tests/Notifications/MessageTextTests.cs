using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using HotShop.Monitor.Notifications;
using NodaTime;
using Xunit;

namespace HotShop.Monitor.Tests.Notifications;

public sealed class MessageTextTests
{
    static readonly Instant since = Instant.FromUtc(2026, 3, 1, 1, 14);
    static readonly DateTimeZone berlin = DateTimeZoneProviders.Tzdb["Europe/Berlin"];
    static readonly AlarmSnapshot overheat = AlarmSnapshot.Of(FakeAlarms.Overheat(since));

    [Fact]
    public void A_call_says_what_where_how_much_since_when_what_first_and_a_caution() => Assert.Equal(
        "#1 Furnace 1 crown is 1302 °C (2376 °F), limit 1290 °C (2354 °F), since 02:14. First: Look at the burner from outside and turn the controller down. Smell gas? Touch no switch, get out, call from outside.",
        MessageText.Call(overheat, 1, berlin));

    [Fact]
    public void The_end_says_how_long_it_lasted_and_never_that_all_is_well()
    {
        var text = MessageText.Closing(overheat, 4, since + Duration.FromMinutes(56), heldBy: null, berlin);
        Assert.StartsWith("#4 Ended 03:10 after 56 min. Nobody said they had it; look at it before you rely on it. It was:", text, StringComparison.Ordinal);
        Assert.DoesNotContain("safe", text, StringComparison.OrdinalIgnoreCase);
    }

    [Property(MaxTest = 300)]
    public Property No_message_is_longer_than_a_lock_screen_shows_and_the_caution_is_always_there() => Prop.ForAll(
        ArbMap.Default.ArbFor<NonEmptyString>(), ArbMap.Default.ArbFor<NonEmptyString>(), ArbMap.Default.ArbFor<int>(),
        (sentence, first, step) =>
        {
            var alarm = overheat with { Sentence = Long(sentence.Get, step), FirstStep = Long(first.Get, step) };
            var call = MessageText.Call(alarm, Math.Abs(step % 1000), berlin);
            return call.Length <= MessageText.LongestCharacters && call.EndsWith("Smell gas? Touch no switch, get out, call from outside.", StringComparison.Ordinal)
                && MessageText.Closing(alarm, 1, since, "Ana", berlin).Length <= MessageText.LongestCharacters
                && MessageText.Held(alarm, 1, "Ana", since, berlin).Length <= MessageText.LongestCharacters;
        });

    [Theory, InlineData(45, "45 s"), InlineData(56 * 60, "56 min"), InlineData(9000, "2.5 h")]
    public void A_span_is_said_as_a_person_would(int seconds, string words) => Assert.Equal(words, MessageText.Span(Duration.FromSeconds(seconds)));

    static string Long(string text, int times) => string.Join(' ', Enumerable.Repeat(text, Math.Abs(times % 40) + 1));
}
