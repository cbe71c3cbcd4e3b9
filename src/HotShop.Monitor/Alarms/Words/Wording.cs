using System.Globalization;
using HotShop.Monitor.Alarms.Conditions;
using HotShop.Monitor.Configuration;
using NodaTime;

namespace HotShop.Monitor.Alarms.Words;

/// <summary>What an alarm says: what, where, value against limit, what it may lead to, what first, what not to do.</summary>
internal static class Wording
{
    /// <summary>The longest that sentence, start and first step may be together, in characters: a phone shows no more.</summary>
    public const int LongestMessage = 240;

    public static AlarmWords Of(AlarmDefinition definition, in Finding finding, Instant since, DateTimeZone zone)
    {
        var advice = Advice.Of(definition.Kind, definition.ApplianceKind, definition.Channel);
        var sentence = Sentence(definition, finding);
        var longest = LongestMessage - Join(string.Empty, Say.Clock(since, zone), advice.FirstStep).Length;
        return new AlarmWords(sentence.Length <= longest ? sentence : sentence[..(longest - 1)] + "…", advice.Consequence, advice.FirstStep, advice.Caution);
    }

    /// <summary>What goes to a phone: the sentence, since when by the studio's clock, and what to do first.</summary>
    /// <returns>At most <see cref="LongestMessage"/> characters.</returns>
    public static string Message(AlarmOccurrence occurrence, DateTimeZone zone) =>
        Join(occurrence.Words.Sentence, Say.Clock(occurrence.Since, zone), occurrence.Words.FirstStep);

    static string Join(string sentence, string since, string firstStep) => $"{sentence}, since {since}. {firstStep}";

    /// <summary>The kind in words, for a list.</summary>
    public static string NameOf(string kind) => kind switch
    {
        AlarmKinds.Overheat => "too hot",
        AlarmKinds.FlameFailure => "no flame",
        AlarmKinds.FallingWithGas => "falling with gas flowing",
        AlarmKinds.AnnealerDrift => "annealer off its curve",
        AlarmKinds.Silent => "silent sensor",
        AlarmKinds.MainsLost => "mains lost",
        AlarmKinds.LockOut => "burner locked out",
        AlarmKinds.CarbonMonoxide => "carbon monoxide",
        AlarmKinds.CarbonMonoxideWarning => "carbon monoxide, warning",
        AlarmKinds.CombustibleGas => "combustible gas",
        AlarmKinds.CombustibleGasWarning => "combustible gas, warning",
        AlarmKinds.ServiceTrouble => "the monitor has trouble",
        _ => kind,
    };

    static string Sentence(AlarmDefinition definition, in Finding finding)
    {
        var (what, channel) = (definition.ApplianceName, definition.Channel?.Replace('-', ' '));
        var value = finding.Value ?? 0;
        var limit = finding.Limit ?? definition.Limit ?? 0;
        return definition.Kind switch
        {
            AlarmKinds.Overheat => $"{what} {channel} is {Say.Temperature(value)}, limit {Say.Temperature(limit)}",
            AlarmKinds.FlameFailure => $"{what}: no flame seen although fire is wanted{(finding.Detail is { } flow ? $", and gas still flows ({flow})" : "")}",
            AlarmKinds.FallingWithGas => $"{what} falls {Say.Difference(value)} an hour, limit {Say.Difference(limit)}, with gas flowing; fire lost? Inferred, there is no flame sensor",
            AlarmKinds.AnnealerDrift => $"{what} is {Say.Difference(Math.Abs(value))} {(value < 0 ? "below" : "above")} its curve of {finding.Detail}, limit {Say.Difference(limit)}",
            AlarmKinds.Silent => Silent(what, channel!, finding.Detail, limit),
            AlarmKinds.MainsLost => $"{what}: mains power is off",
            AlarmKinds.LockOut => $"{what}: the burner is locked out",
            AlarmKinds.CarbonMonoxide or AlarmKinds.CarbonMonoxideWarning => string.Create(CultureInfo.InvariantCulture, $"{what}: carbon monoxide is {value:0} ppm, limit {limit:0} ppm"),
            AlarmKinds.CombustibleGas or AlarmKinds.CombustibleGasWarning => string.Create(CultureInfo.InvariantCulture, $"{what}: combustible gas is {value:0} % of the lower explosive limit, limit {limit:0} %"),
            AlarmKinds.ServiceTrouble => $"{what} has trouble with its {channel}: {finding.Detail}",
            _ => throw new ArgumentException($"no words for {definition.Kind}", nameof(definition)),
        };
    }

    static string Silent(string what, string channel, string? detail, double limitSeconds) => detail switch
    {
        null => $"{what} {channel} has sent nothing for more than {Say.Seconds(limitSeconds)}",
        _ when detail.StartsWith(Say.SinceStart, StringComparison.Ordinal) =>
            $"{what} {channel} has sent nothing since the service started ({detail[Say.SinceStart.Length..]} allowed after a start)",
        Say.OpenCircuit => $"{what} {channel} has sent nothing usable for more than {Say.Seconds(limitSeconds)}: {detail}",
        _ => $"{what} {channel} has sent nothing usable for more than {Say.Seconds(limitSeconds)}: last {detail}, which it cannot be",
    };
}
