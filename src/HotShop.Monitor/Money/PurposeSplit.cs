using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>
/// Cuts a day's share of an appliance by purpose, in the proportion in which its hours were spent. By the mode that was in force; and of a furnace whose own holding
/// power is known, what it burnt up to that while it ran is holding, and what it burnt above is melting: heat into the glass, doors opened to charge and gather. Pure.
/// </summary>
sealed class PurposeSplit
{
    static readonly int purposes = Enum.GetValues<Purpose>().Length;

    readonly Dictionary<(LocalDate Day, string Appliance), Spent> spent = [];
    readonly Dictionary<string, ApplianceKind> kinds;
    readonly IReadOnlyDictionary<string, double> holdingKilowatts;

    /// <param name="plan">Its appliances.</param>
    /// <param name="hours">The studio's use by the hour.</param>
    /// <param name="modesOf">Modes of an appliance over the same time.</param>
    /// <param name="holdingKilowatts">Of the furnaces where it is known.</param>
    public PurposeSplit(StudioPlan plan, IReadOnlyList<StudioUse> hours, Func<string, IReadOnlyList<ModeStretch>> modesOf, IReadOnlyDictionary<string, double> holdingKilowatts)
    {
        this.holdingKilowatts = holdingKilowatts;
        kinds = plan.Appliances.ToDictionary(a => a.Id, a => a.Kind);
        var cursors = plan.Appliances.ToDictionary(a => a.Id, a => new Cursor(a.Kind, modesOf(a.Id)));
        // A year has a hundred thousand shares of an hour: what they are added to is looked up once a day.
        var today = new Dictionary<string, Spent>();
        LocalDate? day = null;
        foreach (var hour in hours)
        {
            var date = hour.From.InZone(plan.Zone).Date;
            if (date != day) today.Clear();
            day = date;
            foreach (var share in hour.Shares)
            {
                if (!today.TryGetValue(share.Appliance, out var sum)) spent[(date, share.Appliance)] = today[share.Appliance] = sum = new Spent();
                if (cursors.TryGetValue(share.Appliance, out var cursor)) cursor.Add(sum, hour, share);
                else sum.Of(share.Kind)[(int)Purpose.NotExplained] += Math.Max(0, share.KilowattHours.Value);
            }
        }
    }

    public IEnumerable<DayShare> Of(LocalDate day, FuelShare share)
    {
        var parts = spent.TryGetValue((day, share.Appliance), out var known) ? ByHoldingPower(share.Appliance, known, share.Kind) : [];
        var sum = parts.Sum();
        if (sum <= 0)
        {
            yield return Part(kinds.GetValueOrDefault(share.Appliance, ApplianceKind.Shop) == ApplianceKind.Shop ? Purpose.NotExplained : Purpose.Idle, 1);
            yield break;
        }
        for (var i = 0; i < parts.Length; i++) if (parts[i] > 0) yield return Part((Purpose)i, parts[i] / sum);

        DayShare Part(Purpose purpose, double part) => new(
            day, share.Appliance, share.Kind, share.Origin, purpose, share.KilowattHours.Value * part, share.BaseCubicMetres * part, share.LineCubicMetres * part)
        {
            EnergyRelative = StudioUse.RelativeOf(share.KilowattHours), VolumeRelative = StudioUse.RelativeOf(share.BaseVolume),
        };
    }

    /// <summary>By the day, not by the hour: a fire goes up and down around its holding power, and only the upper half of that would count as melting.</summary>
    double[] ByHoldingPower(string appliance, Spent day, EnergyKind kind)
    {
        var parts = day.Of(kind);
        if (!holdingKilowatts.TryGetValue(appliance, out var kilowatts)) return parts;
        var running = Running(day.Of(EnergyKind.Gas)) + Running(day.Of(EnergyKind.Electricity));
        if (running <= 0) return parts;
        var held = Math.Min(1, kilowatts * day.RunningHours / running);
        var (own, split) = (Running(parts), (double[])parts.Clone());
        (split[(int)Purpose.Holding], split[(int)Purpose.Melting], split[(int)Purpose.Working]) = (own * held, own * (1 - held), 0);
        return split;
    }

    static double Running(double[] parts) => parts[(int)Purpose.Holding] + parts[(int)Purpose.Melting] + parts[(int)Purpose.Working];

    /// <summary>What an appliance used on a day, kWh by purpose.</summary>
    sealed class Spent
    {
        readonly double[] gas = new double[purposes], electricity = new double[purposes];

        /// <summary>Hours in which it burnt anything and was to hold, melt or work.</summary>
        public double RunningHours { get; set; }

        public double[] Of(EnergyKind kind) => kind == EnergyKind.Gas ? gas : electricity;
    }

    /// <summary>Walks an appliance's modes forward with the hours.</summary>
    sealed class Cursor(ApplianceKind kind, IReadOnlyList<ModeStretch> stretches)
    {
        int at;
        Instant counted = Instant.MinValue;

        public void Add(Spent sum, StudioUse hour, FuelShare share)
        {
            if (share.KilowattHours.Value <= 0) return;
            while (at + 1 < stretches.Count && stretches[at].To <= hour.From) at++;
            for (var i = at; i < stretches.Count && stretches[i].From < hour.To; i++)
            {
                var time = Instant.Min(hour.To, stretches[i].To) - Instant.Max(hour.From, stretches[i].From);
                var purpose = Purposes.Of(kind, stretches[i].Mode);
                sum.Of(share.Kind)[(int)purpose] += share.KilowattHours.Value * (time / (hour.To - hour.From));
                // Gas and electricity of the same hour are one hour.
                if (counted != hour.From && purpose is (Purpose.Holding or Purpose.Melting or Purpose.Working)) sum.RunningHours += time.TotalHours;
            }
            counted = hour.From;
        }
    }
}
