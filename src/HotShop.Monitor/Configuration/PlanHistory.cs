using System.Text.Json;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Configuration;

/// <summary>A stretch of time, [From, To), and the plan that was in force in it.</summary>
public sealed record PlanStretch(Instant From, Instant To, StudioPlan Plan);

/// <summary>
/// The plan that was in force at any moment: last month's fuel keeps last month's heating value. What was <em>changed</em> holds from the day
/// the service first ran with it; what was <em>added</em> (an appliance, a channel, a pot) holds for the past too, as nothing contradicts it there,
/// and readings of it can have been imported. The first configuration holds for all time before. <see cref="StudioConfiguration.Dated"/> corrects the past.
/// </summary>
public sealed class PlanHistory
{
    readonly Instant[] starts;
    readonly StudioPlan[] plans;
    readonly Lazy<PlanHistory> asRun;

    /// <param name="today">The configuration in force now; its dated values and its zone are the ones that count.</param>
    /// <param name="kept">Every configuration that was in force with its first moment, in order of time.</param>
    public PlanHistory(StudioPlan today, IReadOnlyList<(Instant From, StudioConfiguration Configuration)> kept)
    {
        Today = today;
        asRun = new Lazy<PlanHistory>(() => today.Configuration.Dated.Count == 0 ? this : new PlanHistory(today with { Configuration = today.Configuration with { Dated = [] } }, kept));
        var dated = today.Configuration.Dated;
        var bare = kept.Count == 0 ? [(From: Instant.MinValue, today.Configuration)] : kept.ToArray();
        var completed = Completed(bare);
        var edges = bare.Skip(1).Select(s => s.From)
            .Concat(dated.SelectMany(d => new[] { d.FirstInstant(today.Zone), d.EndInstant(today.Zone) }).OfType<Instant>())
            .Append(Instant.MinValue).Distinct().Order();
        var (foundStarts, foundPlans, last) = (new List<Instant>(), new List<StudioPlan>(), (string?)null);
        var todayKey = Key(today.Configuration);
        foreach (var edge in edges)
        {
            var then = Math.Max(0, Array.FindLastIndex(bare, s => s.From <= edge));
            var held = dated.Where(d => d.HoldsAt(edge, today.Zone)).ToList();
            var configuration = DatedValues.Apply(completed[then] with { Dated = [] }, held);
            // People and ports change no figure: only a change of what is computed from begins a new stretch. An addition does, as what it adds may not have told anything before.
            var key = Key(DatedValues.Apply(bare[then].Configuration with { Dated = [] }, held));
            if (key == last) continue;
            last = key;
            foundStarts.Add(edge);
            foundPlans.Add(key == todayKey ? today : PlanBuilder.Build(configuration, today.BaseDirectory) with { DataDirectory = today.DataDirectory });
        }
        (starts, plans) = ([.. foundStarts], [.. foundPlans]);
    }

    /// <summary>The plan of the running service.</summary>
    public StudioPlan Today { get; }

    /// <summary>What the service ran with, before anything was put right with dated values.</summary>
    public PlanHistory AsRun => asRun.Value;

    /// <summary>One plan for all time.</summary>
    public static PlanHistory Always(StudioPlan plan) => new(plan, []);

    public StudioPlan At(Instant at) => plans[IndexAt(at)];

    /// <summary>The channel as it was described at a moment; as it is today where it was not known then. Null where nobody ever described it.</summary>
    public ChannelPlan? Channel(string id, Instant at) => At(at).Channels.Find(id) ?? Today.Channels.Find(id);

    /// <summary>Stretches of [from, to) in order, without a gap; none where it is empty. The ends are the question's own.</summary>
    public IReadOnlyList<PlanStretch> Between(Instant from, Instant to)
    {
        var stretches = new List<PlanStretch>();
        for (var i = IndexAt(from); from < to; i++)
        {
            var end = i + 1 < starts.Length && starts[i + 1] < to ? starts[i + 1] : to;
            stretches.Add(new PlanStretch(from, end, plans[i]));
            from = end;
        }
        return stretches;
    }

    int IndexAt(Instant at)
    {
        var found = Array.BinarySearch(starts, at);
        return found >= 0 ? found : ~found - 1;
    }

    /// <summary>What figures are computed from.</summary>
    static string Key(StudioConfiguration configuration) =>
        JsonSerializer.Serialize(configuration with { Gas = configuration.Gas.InForce(), Dated = [], People = [], Notifications = new(), Http = new(), Broker = new(), Store = new(), Backup = new(), Prices = [], EmergencyNumbers = [], DataDirectory = "", Schema = null }, ConfigurationFile.Json);

    /// <summary>Backwards in time, so that what a later configuration added is known to the earlier ones.</summary>
    static StudioConfiguration[] Completed(IEnumerable<(Instant From, StudioConfiguration Configuration)> kept)
    {
        var all = kept.Select(k => k.Configuration).ToArray();
        for (var i = all.Length - 2; i >= 0; i--) all[i] = With(all[i], all[i + 1]);
        return all;
    }

    static StudioConfiguration With(StudioConfiguration then, StudioConfiguration later)
    {
        var known = then.Appliances.Select(a => a.Id).ToHashSet(StringComparer.Ordinal);
        return then with
        {
            Appliances =
            [
                .. then.Appliances.Select(a => later.Appliances.FirstOrDefault(l => l.Id == a.Id) is { } next ? With(a, next) : a),
                .. later.Appliances.Where(a => !known.Contains(a.Id)),
            ],
        };
    }

    static ApplianceOptions With(ApplianceOptions then, ApplianceOptions later)
    {
        var known = then.Channels.Select(c => c.Id).ToHashSet(StringComparer.Ordinal);
        return then with { Pot = then.Pot ?? later.Pot, Channels = [.. then.Channels, .. later.Channels.Where(c => !known.Contains(c.Id))] };
    }
}
