using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Wire;
using HotShop.Physics.Statistics;
using NodaTime;

namespace HotShop.Monitor.Fuel;

/// <summary>A reading of a meter as somebody typed it.</summary>
public sealed record MeterReadingAnswer(string Entry, Instant Time, double Reading, string Unit, string? Who, bool IsExchange, double? NewMeterReading, bool HasPhoto);

/// <summary>What passed a meter over a span, with its 95 % interval. Cubic metres as the meter counts them; 0 for electricity.</summary>
public sealed record MeterPassed(double VolumeM3, double VolumeM3Low95, double VolumeM3High95, double EnergyKwh, double EnergyKwhLow95, double EnergyKwhHigh95);

/// <summary>A meter against those behind it.</summary>
/// <param name="DifferenceShare">What the meters behind it count more (+) or less (-), over what it counts.</param>
/// <param name="BandShare">By how much they may differ, being meters of their class (95 %).</param>
/// <param name="Words">The same as a sentence, with what to do.</param>
public sealed record MeterAgainstAnswer(
    Instant From, Instant To, double OwnKwh, double OwnKwhLow95, double OwnKwhHigh95, double BehindKwh, double BehindKwhLow95, double BehindKwhHigh95,
    double DifferenceShare, double DifferenceShareLow95, double DifferenceShareHigh95, double BandShare, bool IsBeyond, string Words);

/// <summary>What a meter sent against its own register.</summary>
/// <param name="DifferenceShare">What was sent more (+) or less (-), over what the register counted.</param>
/// <param name="BandShare">By how much they may differ for the reading alone.</param>
public sealed record MeterRegisterAnswer(
    Instant From, Instant To, double DifferenceShare, double DifferenceShareLow95, double DifferenceShareHigh95, double BandShare, bool IsBeyond, string Words);

/// <summary>A meter at its place, what passed it, and what it counted last.</summary>
/// <param name="Reports">typed: people read it; periodic or on-change: it sends.</param>
/// <param name="Parent">The meter right before it; null: none of ours.</param>
/// <param name="UsualPerDay">What passes on a day lately, in <paramref name="CanonicalUnit"/>; null while nothing is known.</param>
public sealed record MeterAnswer(
    string Id, string Appliance, string Channel, string Name, string Energy, string Reports, bool IsMain, string? Parent, IReadOnlyList<string> Serves, string CanonicalUnit,
    int? CounterDigits, double? SensorValue, Instant? SensorTime, IReadOnlyList<MeterReadingAnswer> Readings, double? UsualPerDay, double? UsualPerDayLow95, double? UsualPerDayHigh95,
    MeterPassed Today, MeterPassed Week, MeterAgainstAnswer? Against, MeterRegisterAnswer? Register)
{
    /// <summary>Its accuracy class: how far it may be off, in percent either way.</summary>
    public double ClassPercent { get; init; }
}

/// <summary>What the page of the meters shows.</summary>
sealed class MeterAnswers(StudioPlan plan, StudioFuel studio, FuelBook fuel, MeterLog log, PhotoShelf photos, LatestReadings latest)
{
    const int ReadingsShown = 12;

    public IReadOnlyList<MeterAnswer> All(Instant now)
    {
        var midnight = plan.Zone.AtStartOfDay(now.InZone(plan.Zone).Date).ToInstant();
        var today = Between(midnight, now, now);
        var week = Between(plan.Zone.AtStartOfDay(now.InZone(plan.Zone).Date.PlusDays(-6)).ToInstant(), now, now);
        var lately = Between(now - Duration.FromDays(28), now, now);
        return [.. studio.Meters.Nodes.OrderBy(n => (n.Kind, !n.IsMain, n.Parent is not null, n.Channel.Id)).Select(n => Of(n, today, week, lately, now))];
    }

    StudioUse? Between(Instant from, Instant to, Instant now) => from < to ? studio.Between(from, to, now) : null;

    MeterAnswer Of(MeterNode node, StudioUse? today, StudioUse? week, StudioUse? lately, Instant now)
    {
        var meter = node.Channel;
        var readings = meter.Quantity.IsCumulative() ? log.Of(meter) : [];
        var comparison = new MeterComparison(plan, studio, fuel, log);
        var sensor = meter.IsTyped ? null : latest.Of(meter);
        var usual = Usual(node, readings, lately);
        return new MeterAnswer(
            $"{plan.Site}/{meter.Id}", meter.Appliance, meter.Name, plan.Appliance(meter.Appliance)!.Name, node.Kind == EnergyKind.Gas ? "gas" : "electricity",
            meter.IsTyped ? "typed" : meter.OnChangeOnly ? "on-change" : "periodic", node.IsMain, node.Parent is { } parent ? $"{plan.Site}/{parent.Id}" : null,
            node.IsMain ? [] : [.. node.Appliances.Select(a => a.Id)], node.Kind == EnergyKind.Gas ? "m3" : "kW.h", meter.CounterDigits, sensor?.Value, sensor?.At,
            [.. readings.TakeLast(ReadingsShown).Reverse().Select(r => new MeterReadingAnswer(r.Entry, r.At, r.Number, r.Unit, r.Who, r.NewNumber is not null, r.NewNumber, photos.Of(r.Entry) is not null))],
            usual?.Value, usual?.Low95, usual?.High95, Passed(node, today), Passed(node, week), comparison.Of(node, now), comparison.AgainstRegister(node, now)) { ClassPercent = meter.ClassPercent };
    }

    /// <summary>From its own readings where it is read; else from what passed lately.</summary>
    static Estimate? Usual(MeterNode node, IReadOnlyList<MeterReading> readings, StudioUse? lately)
    {
        var stretches = TypedStretch.Of(readings, node.Channel).Where(s => s.Amount is not null).TakeLast(8).ToList();
        if (stretches.Count > 0)
        {
            var (amount, span) = (stretches.Sum(s => s.Amount!.Value), stretches.Sum(s => (s.To - s.From).TotalDays));
            // Readings between the first and the last cancel: each ends one stretch and begins the next.
            return new Estimate(amount / span, double.Hypot(FuelDoubt.Of(node.Channel) * amount, double.Hypot(stretches[0].ReadingUncertainty, stretches[^1].ReadingUncertainty)) / span);
        }
        if (node.Channel.IsTyped || lately is not { MeasuredShare: > 0 }) return null;
        var days = (lately.To - lately.From).TotalDays * lately.MeasuredShare;
        var passed = node.Kind == EnergyKind.Gas ? Volume(node, Shares(node, lately)) : Energy(node, lately, Shares(node, lately));
        return passed.Value > 0 ? new Estimate(passed.Value / days, passed.StandardUncertainty / days) : null;
    }

    static MeterPassed Passed(MeterNode node, StudioUse? use)
    {
        if (use is null) return new MeterPassed(0, 0, 0, 0, 0, 0);
        var shares = Shares(node, use);
        var (volume, energy) = (Volume(node, shares), Energy(node, use, shares));
        return new MeterPassed(volume.Value, Math.Max(0, volume.Low95), volume.High95, energy.Value, Math.Max(0, energy.Low95), energy.High95);
    }

    static List<FuelShare> Shares(MeterNode node, StudioUse use) =>
        [.. use.Shares.Where(s => s.Kind == node.Kind && (node.IsMain || node.Appliances.Any(a => a.Id == s.Appliance)))];

    static Estimate Energy(MeterNode node, StudioUse use, List<FuelShare> shares) =>
        node.IsMain ? node.Kind == EnergyKind.Gas ? use.Gas : use.Electricity : StudioUse.Common(shares.Select(s => s.KilowattHours));

    /// <summary>As the meter counts: the gas and its conditions have no part in the doubt; what was not measured, or only spread, has.</summary>
    static Estimate Volume(MeterNode node, List<FuelShare> shares) => node.IsMain
        ? Estimate.Relative(shares.Sum(s => s.LineCubicMetres), FuelDoubt.Of(node.Channel))
        : StudioUse.Common(shares.Select(s => Estimate.Relative(s.LineCubicMetres, s.LineRelative)));
}
