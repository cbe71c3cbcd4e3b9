using HotShop.Monitor.Configuration;
using HotShop.Monitor.Fuel;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Modes;
using NodaTime;

namespace HotShop.Monitor.Money;

/// <summary>Cuts a day's share of an appliance by purpose, in the proportion in which its hours were spent. Pure.</summary>
sealed class PurposeSplit
{
    readonly Dictionary<(LocalDate Day, string Appliance, EnergyKind Kind), double[]> spent = [];
    readonly Dictionary<string, ApplianceKind> kinds;

    static readonly int purposes = Enum.GetValues<Purpose>().Length;

    public PurposeSplit(StudioPlan plan, IReadOnlyList<StudioUse> hours, Func<string, IReadOnlyList<ModeStretch>> modesOf)
    {
        kinds = plan.Appliances.ToDictionary(a => a.Id, a => a.Kind);
        var cursors = plan.Appliances.ToDictionary(a => a.Id, a => new Cursor(modesOf(a.Id)));
        foreach (var hour in hours)
        {
            var day = hour.From.InZone(plan.Zone).Date;
            foreach (var share in hour.Shares)
            {
                if (!spent.TryGetValue((day, share.Appliance, share.Kind), out var parts)) spent[(day, share.Appliance, share.Kind)] = parts = new double[purposes];
                foreach (var (mode, part) in ModesOf(share.Appliance, hour))
                    parts[(int)Purposes.Of(KindOf(share.Appliance), mode)] += Math.Max(0, share.KilowattHours.Value) * part;
            }
        }

        IEnumerable<(Mode Mode, double Part)> ModesOf(string appliance, StudioUse hour) =>
            cursors.TryGetValue(appliance, out var cursor) ? cursor.Of(hour.From, hour.To) : [(Mode.Holding, 1)];
    }

    /// <summary>What no appliance of the configuration used is the shop's.</summary>
    ApplianceKind KindOf(string appliance) => kinds.GetValueOrDefault(appliance, ApplianceKind.Shop);

    public IEnumerable<DayShare> Of(LocalDate day, FuelShare share)
    {
        var parts = spent.GetValueOrDefault((day, share.Appliance, share.Kind));
        var sum = parts?.Sum() ?? 0;
        if (parts is null || sum <= 0)
        {
            yield return Part(KindOf(share.Appliance) == ApplianceKind.Shop ? Purpose.NotExplained : Purpose.Idle, 1);
            yield break;
        }
        for (var i = 0; i < parts.Length; i++) if (parts[i] > 0) yield return Part((Purpose)i, parts[i] / sum);

        DayShare Part(Purpose purpose, double part) => new(
            day, share.Appliance, share.Kind, share.Origin, purpose, share.KilowattHours.Value * part, share.BaseCubicMetres * part, share.LineCubicMetres * part);
    }

    /// <summary>Walks an appliance's modes forward with the hours.</summary>
    sealed class Cursor(IReadOnlyList<ModeStretch> stretches)
    {
        int at;

        /// <summary>Modes in force in [from, to) with their parts of it.</summary>
        public IEnumerable<(Mode Mode, double Part)> Of(Instant from, Instant to)
        {
            while (at + 1 < stretches.Count && stretches[at].To <= from) at++;
            for (var i = at; i < stretches.Count && stretches[i].From < to; i++)
            {
                var part = (Instant.Min(to, stretches[i].To) - Instant.Max(from, stretches[i].From)) / (to - from);
                if (part > 0) yield return (stretches[i].Mode, part);
            }
        }
    }
}
