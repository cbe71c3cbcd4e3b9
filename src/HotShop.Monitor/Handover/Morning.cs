using HotShop.Monitor.Alarms;
using HotShop.Monitor.Alarms.Late;
using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Pot;
using NodaTime;

namespace HotShop.Monitor.Handover;

/// <summary>Readings that came too late to ring.</summary>
/// <param name="Alarm">The alarm they would have raised; null where they only filled a gap.</param>
sealed record LateNews(LateStretch Stretch, AlarmDefinition? Alarm, string ApplianceName, string ChannelName, bool IsTemperature);

/// <param name="Next">Who is called when the first does not answer; null where nobody else is named.</param>
/// <param name="NextAfter">After how long.</param>
sealed record Tonight(PersonOptions? First, PersonOptions? Next, Duration NextAfter);

/// <param name="Name">Of its appliance.</param>
sealed record PotMorning(string Appliance, string Name, PotReport Report);

/// <summary>All facts of a morning handover. The words are made of them in one place.</summary>
/// <param name="LastHeardAt">Newest reading of the night; null where nothing was measured.</param>
/// <param name="IsStale">Nothing was heard at the end of the night.</param>
/// <param name="MailNote">What became of this morning's mail where it was not simply sent.</param>
sealed record Morning(
    Night Night, Instant Now, IReadOnlyList<ApplianceNight> Appliances, IReadOnlyList<NightTrouble> Troubles, IReadOnlyList<LateNews> Late, IReadOnlyList<Opening> Openings,
    IReadOnlyList<PotMorning> Pots, NightGas? Gas, Tonight Tonight, Worn Worn, TakenOver? TakenOver, TakenOver? TakenOverBefore, IReadOnlyList<LogEntry> Log,
    Instant? LastHeardAt, bool IsStale, string? MailNote)
{
    public IEnumerable<NightTrouble> Urgent => Troubles.Where(t => t.IsUrgent);

    /// <summary>Questions that the night left open.</summary>
    public IEnumerable<NightTrouble> Questions => Troubles.Where(t => t.WantsCause);
}
