using HotShop.Monitor.Fuel;
using HotShop.Monitor.Money;
using NodaTime;

namespace HotShop.Monitor.Reports;

/// <summary>What an account says, in sentences: the same on the page, on paper and in the mail. Every figure in them is the account's own text.</summary>
sealed class AccountStory(Account account, StudioFormat format)
{
    AccountSpan Span => account.Span;

    /// <summary>The name of the span in running text: "October 2026", "2026".</summary>
    string Name => Span.Title;

    public bool IsEmpty => account.EnergyKwh.Value <= 0 && account.MeasuredShare.Value <= 0;

    /// <summary>What did it cost, and where does it head?</summary>
    public string Headline => (IsEmpty, account.Cost, account.Forecast) switch
    {
        (true, _, _) => Span.IsUnderWay ? $"Nothing is known of {Name} yet" : $"Nothing is known of {Name}",
        (_, null, _) => Span.IsUnderWay ? $"{Name} has used {account.EnergyKwh.Text} so far" : $"{Name} used {account.EnergyKwh.Text}",
        (_, { } cost, { } forecast) => $"{Name} has cost {cost.Text} by the {Ordinal(Today.Day)} and heads for {forecast.Cost.Text}",
        (_, { } cost, null) => Span.IsUnderWay ? $"{Name} has cost {cost.Text} so far" : $"{Name} cost {cost.Text}",
    };

    LocalDate Today => account.Days.Count > 0 ? account.Days[^1].Day : Span.First;

    /// <summary>Within what limits, and what changed; sentences, the most important first.</summary>
    public IReadOnlyList<string> Lede => [.. Sentences()];

    IEnumerable<string> Sentences()
    {
        if (IsEmpty)
        {
            yield return "Gas and electricity are counted from the first reading on: send readings, or type the meter in.";
            yield break;
        }
        if (account.Cost is null) yield return "It has no price yet: write what the bill says under \"prices\" in hotshop.json, and every day since then is counted in money.";
        if (account.Forecast is { } forecast) yield return $"It will end at {forecast.Cost.IntervalText} (95 %), {forecast.Words}.";
        else if (account.Cost is { } cost && cost.High95 > cost.Low95) yield return $"The meters are good for {cost.IntervalText}.";
        if (Compared() is { } compared) yield return compared;
        foreach (var thin in account.Comparisons.Where(IsThin)) yield return $"{thin.Against} cannot be compared: only {thin.MeasuredShare.Text} of it was measured.";
    }

    /// <summary>An earlier span that was measured much less than this one says little about it.</summary>
    bool IsThin(AccountComparison with) => with.MeasuredShare.Value < 0.8 * account.MeasuredShare.Value;

    string? Compared()
    {
        List<string> against = [.. account.Comparisons.Where(c => !IsThin(c)).Select(Against)];
        return against.Count == 0 ? null : $"{(Span.IsUnderWay ? "By yesterday that was" : "That is")} {string.Join(", and ", against)}.";
    }

    string Against(AccountComparison with)
    {
        if (with.Difference is { } difference)
            return difference.Value == 0 ? $"the same as {with.Against}"
                : $"{format.Amount(Math.Abs(difference.Value))} {(difference.Value > 0 ? "more" : "less")} than {with.Against}{InPercent(with.DifferenceShare)}";
        var energy = with.EnergyDifferenceKwh.Value;
        return $"{format.Energy(Math.Abs(energy))} {(energy >= 0 ? "more" : "less")} than {with.Against}";
    }

    string InPercent(Money.Interval? share) => share is { } known ? $" ({format.Percent(Math.Abs(known.Value))})" : "";

    /// <summary>How well it is known.</summary>
    public string Measured => IsEmpty ? "" : $"{account.MeasuredShare.Text} of the time was measured" + (account.Unmeasured.Count == 0 ? "."
        : $"; not on {(account.Unmeasured.Count <= 3 ? string.Join(", ", account.Unmeasured.Select(r => r.Text)) : $"{account.Unmeasured.Sum(r => r.Days)} days")}, which are hatched. What nobody measured or estimated is not in the sum.");

    /// <summary>How sure the energy is, and mostly for what; null for spans that are not made of whole months.</summary>
    public string? HowSure
    {
        get
        {
            if (account.EnergyKwh is not { Value: > 0 } energy || account.Doubts.Count == 0) return null;
            var half = Math.Max(energy.High95 - energy.Value, energy.Value - energy.Low95) / energy.Value;
            return $"The energy is known to ±{format.Percent(half)} (95 %), mostly for {string.Join(" and ", account.Doubts.Take(2).Select(d => $"{DoubtName(d)} ({d.Share.Text} of the doubt)"))}";
        }
    }

    /// <summary>A reason for doubt in running text.</summary>
    public static string DoubtName(AccountDoubt doubt) => doubt.Name.StartsWith("class of ", StringComparison.Ordinal) ? $"the {doubt.Name}" : doubt.Name switch
    {
        "heating value" or "line temperature" or "line pressure" => $"the gas's {doubt.Name}",
        "compressibility" => "the gas's compressibility",
        var name => name,
    };

    /// <summary>Where each figure that is not measured is marked so.</summary>
    public string Marks => WhereRow.Of(account.Where, format) is var rows && rows.Any(r => r.IsEstimated)
        ? "Rows marked as estimated come from nameplates and on-time, not from a meter."
        : rows.All(r => r.Known.Length == 0) && account.Unmeasured.Count == 0 ? "All of it was measured."
        : "Nothing here is estimated from nameplates. What nobody measured is not in the sum.";

    /// <summary>What the reader must know before trusting the total.</summary>
    public IReadOnlyList<string> Gaps => [.. account.MissingPrices.Select(m => Sentence(m.Text))];

    public string WhereTitle => account.Cost is { } cost ? $"Where the {cost.Text} went" : $"Where the {account.EnergyKwh.Text} went";

    public string KilogramTitle => account.PerUnit.PerKilogram switch
    {
        null => "What a kilogram of glass takes",
        { Cost: { } cost } => $"A kilogram of glass cost {cost.Text}",
        var perKilogram => $"A kilogram of glass took {perKilogram.EnergyKwhPerKilogram.Text}",
    };

    /// <summary>What the figure of a kilogram rests on, and what throughput alone explains.</summary>
    public IReadOnlyList<string> Kilogram => account.PerUnit.PerKilogram is not { } known
        ? ["No glass is logged as charged in this time: log charges on the pot's page, and the cost of a kilogram appears here."]
        : [
            $"{known.GlassKilograms.Text} were melted ({known.GlassKilograms.IntervalText}), with {known.EnergyKwhPerKilogram.Text} ({known.EnergyKwhPerKilogram.IntervalText}), holding included.",
            known.ExpectedKwhPerKilogram is { } expected ? $"At this throughput the furnace's own line gives {expected.Text} ({expected.IntervalText}): {known.ExpectedText}." : $"What it would be at another throughput is {known.ExpectedText}.",
            .. known.Efficiency is { } share ? [$"Of what they burnt {share.Text} ({share.IntervalText}) ended in the glass; the rest held walls and openings hot or went up the flue."] : Array.Empty<string>(),
        ];

    public string CarbonTitle => $"{account.CarbonDioxide.Kilograms.Text} of CO₂ from the energy";

    public IReadOnlyList<string> Prices => [.. account.Prices.SelectMany(p => p.Texts.Select(t => $"{Energy(p.Kind)} since {p.FromText}: {t}"))];

    public static string Energy(EnergyKind kind) => kind == EnergyKind.Gas ? "Gas" : "Electricity";

    /// <summary>Words as a sentence: a capital and a full stop.</summary>
    public static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..].TrimEnd('.') + ".";

    /// <summary>A bill beside the meters, in a line.</summary>
    public string Bill(BillComparison bill) =>
        $"{Energy(bill.Kind)}, {format.Day(bill.First)} to {format.Day(bill.Last)}: {bill.QuantityText}{(bill.Amount is { } asked ? $", {asked.Text}" : "")}. {Sentence(bill.Words)}";

    internal static string Ordinal(int day) => (day % 100, day % 10) switch
    {
        ( >= 11 and <= 13, _) => $"{day}th",
        (_, 1) => $"{day}st",
        (_, 2) => $"{day}nd",
        (_, 3) => $"{day}rd",
        _ => $"{day}th",
    };
}
