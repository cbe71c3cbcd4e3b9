using System.Globalization;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Money;
using HotShop.Monitor.Wire;
using NodaTime;

namespace HotShop.Monitor.Handover.Words;

/// <summary>Glass in the pots, and gas of the night.</summary>
sealed class StockWords(StudioFormat format)
{
    public string Glass(double kilograms) => format.Glass(kilograms);

    public IReadOnlyList<HandoverLine> Pots(Morning morning, MorningTimes times) => [.. morning.Pots.Select(p => Pot(p, morning.Now, times))];

    HandoverLine Pot(PotMorning pot, Instant now, MorningTimes times)
    {
        var (report, state) = (pot.Report, pot.Report.State);
        var ready = report.ReadyAt is not { } at ? "" : at <= now ? $", clear since {times.At(at)}" : $", clear at about {times.At(at)}";
        var parts = new List<string> { $"{format.Glass(report.WorkableKilograms.Value)} of it above the heel." };
        if (report.LastCharge is { } charge) parts.Add($"Last charge {times.At(charge.At)}{Material(charge)}.");
        parts.Add(state.LastDipAt is { } dip ? $"Last dip {times.At(dip)}." : "Never dipped: a dip would narrow it.");
        if (report.Missing.Count > 0)
            parts.Add($"Nobody logged {string.Join(", ", report.Missing.Take(5).Select(m => m.Day.Date.ToString("ddd d MMM", CultureInfo.InvariantCulture)))}{(report.Missing.Count > 5 ? " and other days" : "")}: a tally at the end of the day would narrow it.");
        return new($"{pot.Name}: {format.Glass(state.MassKilograms)}, {format.Glass(state.MassKilogramsLow95)} to {format.Glass(state.MassKilogramsHigh95)}{ready}.", string.Join(" ", parts));
    }

    string Material(LogEntry charge)
    {
        var material = charge.Fields["material"]?.ToString() is { } name ? $" of {name}" : "";
        double? kilograms = charge.Fields["massKg"] is { } mass ? mass.GetValue<double>()
            : charge.Fields["mass"] is { } typed && charge.Fields["unit"]?.ToString() is { } unit ? Ucum.InCanonical(typed.GetValue<double>(), unit, Dimension.Mass) : null;
        return kilograms is { } known ? $", {format.Glass(known)}{material}" : material;
    }

    public IReadOnlyList<HandoverLine> Gas(Morning morning, MorningTimes times)
    {
        if (morning.Gas is not { } gas) return [];
        var span = $"{times.At(gas.From)} to {times.At(gas.To)}";
        var volume = gas.BaseCubicMetres.Value > 0 ? $", {format.Gas(gas.BaseCubicMetres.Value)}" : "";
        var text = $"{span}: {format.EnergyShown(gas.KilowattHours).Text}{volume}.";
        var parts = new List<string> { $"{format.EnergyShown(gas.KilowattHours).IntervalText}, 19 times in 20.", Compared(gas, morning.Night.Kind) };
        if (gas.MeasuredShare < 0.98) parts.Add($"Measured for {format.Percent(gas.MeasuredShare)} of the time.");
        return [new(text, string.Join(" ", parts))];
    }

    string Compared(NightGas gas, NightKind kind)
    {
        var kinds = kind switch { NightKind.BeforeWork => "nights before a working day", NightKind.BeforeRest => "nights before a day off", _ => "nights" };
        if (gas.Verdict == GasVerdict.TooFewNights)
            return gas.Nights == 0 ? $"No earlier {kinds} to compare with." : string.Create(CultureInfo.InvariantCulture, $"Too few earlier {kinds} are known ({gas.Nights}) to call anything normal.");
        var range = string.Create(CultureInfo.InvariantCulture, $"the last {gas.Nights} {kinds} took {format.Energy(gas.LeastKilowattHours!.Value.Value)} to {format.Energy(gas.MostKilowattHours!.Value.Value)}, the middle one {format.Energy(gas.MedianKilowattHours!.Value.Value)}");
        return gas.Verdict switch
        {
            GasVerdict.More => $"More than in any of them: {range}.",
            GasVerdict.Less => $"Less than in any of them: {range}.",
            _ => $"As usual: {range}.",
        };
    }

    /// <summary>For the line under the headline.</summary>
    public static string? GasInShort(NightGas? gas) => gas?.Verdict switch
    {
        GasVerdict.AsUsual => "gas as usual",
        GasVerdict.More => "more gas than usual",
        GasVerdict.Less => "less gas than usual",
        _ => null,
    };
}
