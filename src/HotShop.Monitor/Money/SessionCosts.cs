using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>
/// What the energy of an appliance cost in the time somebody had it, hour by hour, at that day's price of a kWh (taxes and riders included, standing charge not).
/// Who share an appliance share its energy evenly. A cut across the account, not a part of it: what nobody had stays with the studio.
/// </summary>
sealed class SessionCosts(StudioPlan plan, SessionLog log, StudioFormat format)
{
    public IReadOnlyList<SessionCost> Of(Spending spending, Instant from, Instant until)
    {
        var sessions = log.Between(from, until).Select(s => s with { From = Instant.Max(from, s.From), To = Instant.Min(until, s.To) }).ToList();
        if (sessions.Count == 0) return [];
        var prices = spending.Charges.Where(c => c.PerKilowattHour is not null).ToDictionary(c => (c.Kind, c.Day), c => c.PerKilowattHour!.Value);
        var sums = sessions.ToDictionary(s => s.Id, _ => new Sum());
        foreach (var together in sessions.GroupBy(s => s.Appliance))
            foreach (var (start, end, present) in Pieces([.. together]))
                foreach (var hour in Overlapping(spending.Hours, start, end))
                    foreach (var share in hour.Shares.Where(s => s.Appliance == together.Key))
                        foreach (var one in present)
                            sums[one.Id].Add(share.KilowattHours * Estimate.Exact(PartOf(hour, start, end) / present.Count), prices.GetValueOrDefault((share.Kind, hour.From.InZone(plan.Zone).Date), -1));
        return [.. sessions.Select(s => Cost(s, sums[s.Id]))];
    }

    public IReadOnlyList<PersonCost> Persons(IReadOnlyList<SessionCost> sessions) =>
        [.. sessions.GroupBy(s => s.Who, StringComparer.OrdinalIgnoreCase).Select(g => new PersonCost(
                g.Key, g.Count(), new Figure(g.Sum(s => s.Hours.Value), format.Hours(g.Sum(s => s.Hours.Value))), format.EnergyShown(Together(g.Select(s => s.EnergyKwh))),
                g.Any(s => s.Amount is null) ? null : format.Shown(g.Sum(s => s.Amount!.Value), g.Sum(s => UncertaintyOf(s.Amount!)))))
            .OrderByDescending(p => p.Amount?.Value ?? 0).ThenBy(p => p.Who, StringComparer.Ordinal)];

    SessionCost Cost(Session session, Sum sum)
    {
        var hours = (session.To - session.From).TotalHours;
        return new SessionCost(
            session.Id, session.Who, session.Appliance, plan.Appliance(session.Appliance)?.Name ?? session.Appliance, session.From, session.To,
            $"{format.Moment(session.From, plan.Zone)} to {format.Moment(session.To, plan.Zone)}", new Figure(hours, format.Hours(hours)), format.EnergyShown(sum.Energy),
            sum.Exact is { } exact ? format.Shown(LargestRemainder.Round(exact, format.Digits), (decimal)sum.CostUncertainty) : null);
    }

    /// <summary>Of one person's sessions: the meters that counted them are the same.</summary>
    static Estimate Together(IEnumerable<Interval> energies) => StudioUse.Common(energies.Select(e => new Estimate(e.Value, (e.High95 - e.Value) / Quantiles.Normal95)));

    static decimal UncertaintyOf(AmountInterval amount) => (amount.High95 - amount.Value) / (decimal)Quantiles.Normal95;

    /// <summary>Time cut where somebody comes or goes, with who is there.</summary>
    static IEnumerable<(Instant Start, Instant End, List<Session> Present)> Pieces(IReadOnlyList<Session> sessions)
    {
        var edges = sessions.SelectMany(s => new[] { s.From, s.To }).Distinct().Order().ToList();
        foreach (var (start, end) in edges.Zip(edges.Skip(1)))
            if (sessions.Where(s => s.From < end && s.To > start).ToList() is { Count: > 0 } present) yield return (start, end, present);
    }

    /// <summary>Found by halving: a year has 8,760 hours.</summary>
    static IEnumerable<StudioUse> Overlapping(IReadOnlyList<StudioUse> hours, Instant start, Instant end)
    {
        int low = 0, high = hours.Count;
        while (low < high)
        {
            var middle = (low + high) / 2;
            if (hours[middle].To <= start) low = middle + 1;
            else high = middle;
        }
        for (var i = low; i < hours.Count && hours[i].From < end; i++) yield return hours[i];
    }

    static double PartOf(StudioUse hour, Instant start, Instant end) => (Instant.Min(end, hour.To) - Instant.Max(start, hour.From)) / (hour.To - hour.From);

    sealed class Sum
    {
        /// <summary>One meter counts all of it: standard uncertainties add.</summary>
        public Estimate Energy { get; private set; }

        public double CostUncertainty { get; private set; }

        /// <summary>Null once something had no price.</summary>
        public decimal? Exact { get; private set; } = 0;

        /// <param name="price">Of a kWh; below zero where there is none.</param>
        public void Add(Estimate energy, decimal price)
        {
            Energy = StudioUse.Common([Energy, energy]);
            if (energy.Value <= 0) return;
            Exact = price < 0 ? null : Exact + (decimal)energy.Value * price;
            CostUncertainty += energy.StandardUncertainty * (double)price;
        }
    }
}
