using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Physics.Pot;
using HotShop.Physics.Statistics;
using HotShop.Physics.Uncertainty;
using NodaTime;

namespace HotShop.Monitor.Pot;

/// <summary>What a pot holds at a moment, and what was logged of it until then.</summary>
public sealed record PotReport(PotPlan Plan, PotState State, IReadOnlyList<PotEvent> Events, LogEntry? LastCharge, Estimate PullKilogramsPerHour)
{
    /// <summary>Worked days since the last dip (or the pot's beginning) of which nobody logged anything: each widens the interval.</summary>
    public IReadOnlyList<MissingDay> Missing { get; init; } = [];

    /// <summary>Glass that can be worked: what stands above the heel, kg.</summary>
    public Estimate WorkableKilograms => State.Workable(Plan.Options.HeelKilograms);

    /// <summary>Hours the workable glass lasts at the pull of the last hours; null while nobody gathers.</summary>
    public Estimate? HoursLeft => PullKilogramsPerHour.Value > 0.05 ? WorkableKilograms / PullKilogramsPerHour : null;

    /// <summary>When the last charge is clear by the configured time; null before the first charge.</summary>
    public Instant? ReadyAt => LastCharge is { } charge ? charge.At + Duration.FromHours(Plan.Options.HoursToClear) : null;
}

/// <summary>Estimates pots from the logbook: the log folded in time order, at any moment. Nothing is kept that the log does not say.</summary>
public sealed class PotBook(StudioPlan plan, LogbookBook logbook)
{
    static readonly Duration PullOver = Duration.FromHours(3);

    readonly Dictionary<string, PotPlan> pots = plan.Appliances.Select(PotPlan.Of).OfType<PotPlan>().ToDictionary(p => p.Appliance);
    readonly Dictionary<string, (long Version, IReadOnlyList<LogEntry> Entries)> kept = [];
    readonly Lock gate = new();

    public IReadOnlyCollection<PotPlan> Pots => pots.Values;

    public PotPlan? Find(string appliance) => pots.GetValueOrDefault(appliance);

    /// <returns>Null where the appliance has no pot.</returns>
    public PotReport? At(string appliance, Instant at)
    {
        if (Find(appliance) is not { } pot) return null;
        var entries = Entries(appliance);
        var missing = Missing(pot, entries, at);
        var events = Events(pot, entries, missing);
        var state = Estimator(pot, entries).At(at, events);
        var taken = state.Taken(
            events.OfType<PotEvent.Gather>().Where(g => g.At > at - PullOver && g.At <= at).Sum(g => g.NominalKilograms * g.Count),
            events.OfType<PotEvent.WeighedGather>().Where(g => g.At > at - PullOver && g.At <= at).Sum(g => g.Kilograms));
        return new PotReport(pot, state, events, entries.LastOrDefault(e => e.Entry == "charge" && e.At <= at), taken / Estimate.Exact(PullOver.TotalHours))
        {
            Missing = [.. missing.Where(m => m.Day.To > (state.LastDipAt ?? Instant.MinValue) && !entries.Any(e => e.Entry == "pot-changed" && e.At <= at && e.At >= m.Day.To))],
        };
    }

    /// <summary>Mass with its interval at each of the moments, for the strip.</summary>
    public IReadOnlyList<PotState> Trace(string appliance, IReadOnlyList<Instant> moments)
    {
        if (Find(appliance) is not { } pot) return [];
        var entries = Entries(appliance);
        return Estimator(pot, entries).Trace(moments, Events(pot, entries, Missing(pot, entries, moments[^1])));
    }

    /// <summary>Glass melted in [from, to): charges times their yield, kg, with its 95 % interval.</summary>
    public Estimate GlassMelted(string appliance, Instant from, Instant to) => Melted([appliance], from, to).Estimate;

    /// <summary>The same of several furnaces together. One scale and one guess at each yield serve all charges: their errors add, they do not average out.</summary>
    internal Budget Melted(IEnumerable<string> appliances, Instant from, Instant to) =>
        LoggedCharges.Sum([.. appliances.SelectMany(a => Find(a) is { } pot ? LoggedCharges.Of(Entries(a), pot, from, to) : [])]);

    /// <summary>What the glass of the charges in [from, to) took up by itself; null where nothing was charged, or there is no pot.</summary>
    internal MeltedHeat? Heat(string appliance, Instant from, Instant to) =>
        Find(appliance) is { } pot ? MeltedHeat.Of(pot, LoggedCharges.Of(Entries(appliance), pot, from, to)) : null;

    /// <summary>The same of several pots together, each with its own glass; null where one of those charged is not known.</summary>
    internal MeltedHeat? Heat(IReadOnlyCollection<string> appliances, Instant from, Instant to)
    {
        var charged = appliances.Select(a => (Heat: Heat(a, from, to), Kilograms: GlassMelted(a, from, to).Value)).Where(p => p.Kilograms > 0).ToList();
        return charged.Count == 0 || charged.Exists(p => p.Heat is null) ? null : MeltedHeat.Mean([.. charged.Select(p => (p.Heat!, p.Kilograms))]);
    }

    /// <summary>Names in the log of [from, to], the last ones first.</summary>
    public IEnumerable<string> WhoLogged(string appliance, Instant from, Instant to) =>
        Entries(appliance).Reverse().SkipWhile(e => e.At > to).TakeWhile(e => e.At >= from).Select(e => e.Who).OfType<string>().Where(w => w != "timetable").Distinct(StringComparer.OrdinalIgnoreCase);

    /// <summary>The days at a pot up to a moment, oldest first: worked ones, and those of which something was logged.</summary>
    public IReadOnlyList<PotDay> Days(string appliance, Instant at) => Find(appliance) is { } pot ? Days(pot, Entries(appliance), at) : [];

    IReadOnlyList<PotDay> Days(PotPlan pot, IReadOnlyList<LogEntry> entries, Instant at) =>
        PotDays.Of(entries, pot, WorkingTimes.Of(WorkingTimes.Witnesses(plan, pot.Appliance).Select(Entries)), plan.Zone, at);

    IReadOnlyList<MissingDay> Missing(PotPlan pot, IReadOnlyList<LogEntry> entries, Instant at) => MissingDays.Of(Days(pot, entries, at), pot.Glass.FullKilograms);

    static IReadOnlyList<PotEvent> Events(PotPlan pot, IReadOnlyList<LogEntry> entries, IReadOnlyList<MissingDay> missing) =>
        [.. PotLog.Events(entries, pot), .. missing.Select(MissingDays.Event)];

    static PotEstimator Estimator(PotPlan pot, IReadOnlyList<LogEntry> entries)
    {
        // A start that somebody typed is a look into the pot: good to a tenth.
        Estimate? start = pot.Options.StartKilograms is { } kilograms ? Estimate.Relative(kilograms, 0.1) : null;
        return new PotEstimator(pot.Glass, null, entries.Any(e => e.Entry == "pot-changed") ? null : start);
    }

    /// <summary>All that holds of a furnace's log, in order of time.</summary>
    internal IReadOnlyList<LogEntry> Entries(string appliance)
    {
        var now = logbook.Version;
        lock (gate)
            if (kept.TryGetValue(appliance, out var known) && known.Version == now) return known.Entries;
        var entries = logbook.InForce(appliance, Instant.MinValue, Instant.MaxValue);
        lock (gate) kept[appliance] = (now, entries);
        return entries;
    }
}
