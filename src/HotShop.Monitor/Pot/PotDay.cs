using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>A day at a pot, in the studio's zone: when it was worked, and what was logged of it.</summary>
/// <param name="From">First moment of work that day, by the mode or the first gather.</param>
/// <param name="To">Last moment of work, by the mode or the last gather.</param>
/// <param name="Worked">How long somebody had set the mode to working.</param>
/// <param name="Gathers">Logged gathers by size, a tally's in place of the single ones.</param>
/// <param name="NominalKilograms">Their glass by the configured sizes, weighed ones by the scale.</param>
/// <param name="TallyId">The entry that counted the day, where one did; to count it again, correct that one.</param>
/// <param name="IsTallied">A tally speaks for it.</param>
/// <param name="IsLogged">Something was logged of it, if only that nobody gathered.</param>
/// <param name="IsOver">Its work has ended, as far as can be said.</param>
public sealed record PotDay(
    LocalDate Date, Instant From, Instant To, Duration Worked, IReadOnlyDictionary<string, int> Gathers, double NominalKilograms, string? TallyId, bool IsTallied, bool IsLogged, bool IsOver)
{
    /// <summary>Shorter than this is lighting a glory hole to look at it. A choice, not a measurement.</summary>
    static readonly Duration WorthAsking = Duration.FromHours(2);

    /// <summary>Somebody worked, and nobody logged what it took.</summary>
    public bool IsMissing => IsOver && !IsLogged && Worked >= WorthAsking;
}

/// <summary>A worked day of which nobody logged anything, and what it may have taken.</summary>
/// <param name="ExpectedKilograms">What such a day usually takes here.</param>
/// <param name="HalfWidth95Kilograms">How far off that may be, with 95 %.</param>
public sealed record MissingDay(PotDay Day, double ExpectedKilograms, double StandardUncertaintyKilograms, double HalfWidth95Kilograms);
