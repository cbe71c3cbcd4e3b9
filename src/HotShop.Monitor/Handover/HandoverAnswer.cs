using HotShop.Monitor.Annealing;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Handover.Words;
using HotShop.Monitor.Modes;
using NodaTime;
using NodaTime.Text;

namespace HotShop.Monitor.Handover;

sealed record ExtremeAnswer(Instant Time, double Celsius);

sealed record GapAnswer(Instant From, Instant To);

/// <param name="By">curve or set point.</param>
sealed record KeptAnswer(double MostKelvin, Instant Time, double BeyondSeconds, string By);

sealed record ApplianceNightAnswer(
    string Appliance, string Name, string Kind, string Mode, Instant? ModeSince, ExtremeAnswer? Low, ExtremeAnswer? High, ExtremeAnswer? Last, IReadOnlyList<GapAnswer> Gaps, KeptAnswer? Kept);

sealed record TroubleAnswer(
    string Occurrence, string Appliance, string Kind, int Priority, string Sentence, Instant Since, Instant? ClearedAt, string? Who, Instant? AcknowledgedAt, IReadOnlyList<string> Called, int Rounds,
    string? Cause, bool WantsCause);

/// <param name="Alarm">The alarm it would have raised; null where it only filled a gap.</param>
sealed record LateAnswer(string Channel, string? Alarm, Instant From, Instant To, double Lowest, double Highest, int Count, Instant ArrivedAt);

/// <param name="Phase">not-known, hot, on-curve, cooling or down.</param>
sealed record OpeningAnswer(
    string Appliance, string Name, string Phase, double? Celsius, double TargetCelsius, Instant? DownSince, Instant? CurveEndsAt, Instant? At, Instant? AtEarliest95, Instant? AtLatest95);

sealed record PotMorningAnswer(string Appliance, double MassKg, double MassKgLow95, double MassKgHigh95, Instant? ReadyAt, IReadOnlyList<string> UnloggedDays);

/// <param name="Verdict">too-few-nights, as-usual, more or less.</param>
sealed record NightGasAnswer(
    Instant From, Instant To, double EnergyKwh, double EnergyKwhLow95, double EnergyKwhHigh95, double VolumeM3, double VolumeM3Low95, double VolumeM3High95, double MeasuredShare, int Nights,
    double? MedianKwh, double? MedianKwhLow95, double? MedianKwhHigh95, double? LeastKwh, double? LeastKwhLow95, double? LeastKwhHigh95, double? MostKwh, double? MostKwhLow95, double? MostKwhHigh95,
    string Verdict);

sealed record CoupleWearAnswer(string Appliance, string Channel, double HoursAbove1000Celsius, Instant Since, bool IsReset);

sealed record DueAnswer(string Name, string? Appliance, Instant? DoneAt, double? LeftDays, double? LeftHours, bool IsDue);

sealed record TakenOverAnswer(string Who, Instant Time);

/// <summary>The handover as the interface gives it: its facts, and the words that page and mail say.</summary>
sealed record HandoverAnswer(
    string Day, Instant From, Instant To, bool IsEndOfWorkLogged, Instant? LastHeardAt, bool IsStale, string Headline, string Lede, IReadOnlyList<HandoverSection> Sections,
    IReadOnlyList<ApplianceNightAnswer> Appliances, IReadOnlyList<TroubleAnswer> Troubles, IReadOnlyList<LateAnswer> FoundLater, IReadOnlyList<OpeningAnswer> Openings, IReadOnlyList<PotMorningAnswer> Pots,
    NightGasAnswer? Gas, string? PhoneTonight, string? NextToCall, IReadOnlyList<CoupleWearAnswer> Couples, IReadOnlyList<DueAnswer> Due, Instant? LastCalibrationAt, TakenOverAnswer? TakenOver, string Caution)
{
    public static HandoverAnswer Of(Morning m, HandoverWords words, string site) => new(
        LocalDatePattern.Iso.Format(m.Night.Morning), m.Night.From, m.Night.To, m.Night.IsEndOfWorkLogged, m.LastHeardAt, m.IsStale, words.Headline(m), words.Lede(m), words.Sections(m),
        [.. m.Appliances.Select(a => Of(a, site))], [.. m.Troubles.Select(Of)],
        [.. m.Late.Select(n => new LateAnswer($"{site}/{n.Stretch.Channel}", n.Alarm?.Id, n.Stretch.From, n.Stretch.Until, n.Stretch.Lowest, n.Stretch.Highest, n.Stretch.Count, n.Stretch.ArrivedAt))],
        [.. m.Openings.Select(o => Of(o, site))],
        [.. m.Pots.Select(p => new PotMorningAnswer($"{site}/{p.Appliance}", p.Report.State.MassKilograms, p.Report.State.MassKilogramsLow95, p.Report.State.MassKilogramsHigh95, p.Report.ReadyAt,
            [.. p.Report.Missing.Select(d => LocalDatePattern.Iso.Format(d.Day.Date))]))],
        m.Gas is { } g ? Of(g) : null,
        m.Tonight.First?.Name, m.Tonight.Next?.Name,
        [.. m.Worn.Couples.Select(c => new CoupleWearAnswer($"{site}/{c.Appliance}", c.Channel, c.HoursHot, c.Since, c.IsReset))],
        [.. m.Worn.Items.Select(i => new DueAnswer(i.Name, i.Appliance, i.DoneAt, i.IsInHours ? null : i.Left, i.IsInHours ? i.Left : null, i.IsDue))],
        m.Worn.LastCalibrationAt, m.TakenOver is { } t ? new(t.Who, t.At) : null, HandoverWords.Caution);

    static ApplianceNightAnswer Of(ApplianceNight a, string site) => new($"{site}/{a.Appliance}", a.Name, a.Kind.NameOf(), a.Mode.NameOf(), a.ModeSince, Of(a.Low), Of(a.High), Of(a.Last),
        [.. a.Gaps.Select(g => new GapAnswer(g.From, g.To))], a.Kept is { } k ? new(k.MostKelvin, k.At, k.Beyond.TotalSeconds, k.IsCurve ? "curve" : "set point") : null);

    static NightGasAnswer Of(NightGas g) => new(
        g.From, g.To, g.KilowattHours.Value, Math.Max(0, g.KilowattHours.Low95), g.KilowattHours.High95, g.BaseCubicMetres.Value, Math.Max(0, g.BaseCubicMetres.Low95), g.BaseCubicMetres.High95,
        g.MeasuredShare, g.Nights, g.MedianKilowattHours?.Value, g.MedianKilowattHours?.Low95, g.MedianKilowattHours?.High95,
        g.LeastKilowattHours?.Value, g.LeastKilowattHours?.Low95, g.LeastKilowattHours?.High95, g.MostKilowattHours?.Value, g.MostKilowattHours?.Low95, g.MostKilowattHours?.High95, Name(g.Verdict));

    static ExtremeAnswer? Of(Extreme? extreme) => extreme is null ? null : new(extreme.At, extreme.Celsius);

    static TroubleAnswer Of(NightTrouble t) => new(t.Occurrence.Id, t.Occurrence.Appliance, t.Occurrence.Kind, t.Occurrence.Priority, t.Occurrence.Words.Sentence, t.Occurrence.Since, t.Occurrence.ClearedAt,
        t.Occurrence.AcknowledgedBy, t.Occurrence.AcknowledgedAt, t.Called, t.Rounds, t.Cause?.Fields["text"]?.ToString(), t.WantsCause);

    static OpeningAnswer Of(Opening o, string site) => new($"{site}/{o.Appliance}", o.Name, Name(o.Phase), o.Celsius, o.TargetCelsius, o.DownSince, o.CurveEndsAt, o.Expected?.At, o.Expected?.Earliest95, o.Expected?.Latest95);

    static string Name(CoolingPhase phase) => phase switch { CoolingPhase.NotKnown => "not-known", CoolingPhase.OnCurve => "on-curve", _ => phase.ToString().ToLowerInvariant() };

    static string Name(GasVerdict verdict) => verdict switch { GasVerdict.TooFewNights => "too-few-nights", GasVerdict.AsUsual => "as-usual", _ => verdict.ToString().ToLowerInvariant() };
}
