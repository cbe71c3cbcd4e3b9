using HotShop.Monitor.Configuration;
using HotShop.Monitor.Http;
using HotShop.Monitor.Logbook;
using HotShop.Physics.Pot;
using NodaTime;
using NodaTime.Extensions;

namespace HotShop.Monitor.Pot;

public sealed record GathersAnswer(string Size, double MassKg, double Left, double LeftLow95, double LeftHigh95);

public sealed record PotPointAnswer(Instant Time, double MassKg, double MassKgLow95, double MassKgHigh95);

public sealed record ProfileAnswer(double HeightCm, double RadiusCm);

public sealed record PotAnswer(
    string Id, Instant At, double MassKg, double MassKgLow95, double MassKgHigh95, double LevelCm, double LevelCmLow95, double LevelCmHigh95,
    double FreeboardCm, double FreeboardCmLow95, double FreeboardCmHigh95, double FullKg, double FullKgLow95, double FullKgHigh95, double HeightCm, double HeelKg,
    IReadOnlyList<GathersAnswer> GathersLeft, double PullKgPerHour, double PullKgPerHourLow95, double PullKgPerHourHigh95, double? HoursLeft, double? HoursLeftLow95, double? HoursLeftHigh95,
    double GatherFactor, double GatherFactorLow95, double GatherFactorHigh95, double MissedShare, double MissedShareLow95, double MissedShareHigh95,
    Instant? LastDipAt, double UnexplainedKg, double UnexplainedKgLow95, double UnexplainedKgHigh95,
    IReadOnlyDictionary<string, object?>? LastCharge, Instant? ReadyAt, IReadOnlyList<ProfileAnswer> InnerProfile, IReadOnlyList<PotPointAnswer> History,
    IReadOnlyDictionary<string, double> GlassYields, PotGlassAnswer Glass, IReadOnlyList<PotDayAnswer> Days, IReadOnlyList<string> People);

/// <param name="From">First moment of work that day: a tally of the day goes from there to <paramref name="To"/>.</param>
/// <param name="TallyId">The entry that counted the day; to count it again, correct that one.</param>
/// <param name="State">tallied, logged, missing (worked, and nobody logged anything), or under-way.</param>
/// <param name="ExpectedKg">Of a missing day: what it is taken to have used, and how far off that may be with 95 %.</param>
public sealed record PotDayAnswer(
    string Date, Instant From, Instant To, double WorkedHours, IReadOnlyDictionary<string, int> Gathers, double NominalKg, string? TallyId, string State,
    double? ExpectedKg, double? ExpectedKgLow95, double? ExpectedKgHigh95, double? ExpectedKgHalfWidth95);

static class PotEndpoints
{
    static readonly Duration HistorySpan = Duration.FromHours(24), PeopleOver = Duration.FromDays(30);
    const int DaysShown = 15, MostPeople = 12;
    const double LongestHistoryHours = 24 * 366;
    const int HistoryPoints = 97;

    public static void MapPots(this IEndpointRouteBuilder app)
    {
        app.MapGet("/api/pots/{site}/{id}", (string site, string id, string? at, double? hours, StudioPlan plan, PotBook pots, TimeProvider clock) => Answer($"{site}/{id}", at, hours, plan, pots, clock)).ExcludeFromDescription();
        app.MapGet("/api/pots/{id}", (string id, string? at, double? hours, StudioPlan plan, PotBook pots, TimeProvider clock) => Answer(id, at, hours, plan, pots, clock))
            .WithName("pot").WithSummary("Glass in a pot, with its 95 % interval, now or at a moment, its last days and so many hours of history");
        app.MapPerKilogram();
    }

    static PotAnswer Answer(string id, string? at, double? hours, StudioPlan plan, PotBook pots, TimeProvider clock)
    {
        var appliance = Ask.Appliance(plan, id);
        var moment = Ask.Time(at, "at", clock.GetUtcNow().ToInstant());
        var report = pots.At(appliance.Id, moment)
            ?? throw new BadHttpRequestException($"'{id}' has no pot: describe it in the configuration to count its glass", StatusCodes.Status404NotFound);
        var (state, options, missed) = (report.State, report.Plan.Options, report.State.MissedGathers);
        if (hours is { } asked && !(asked > 0 && asked <= LongestHistoryHours)) throw new BadHttpRequestException($"'hours' is {asked}: ask for 1 to {LongestHistoryHours} hours of history");
        var span = hours is { } wanted ? Duration.FromHours(wanted) : HistorySpan;
        var step = span / (HistoryPoints - 1);
        var moments = Enumerable.Range(0, HistoryPoints).Select(i => moment - span + step * i).ToList();
        return new PotAnswer(
            $"{plan.Site}/{appliance.Id}", moment, state.MassKilograms, state.MassKilogramsLow95, state.MassKilogramsHigh95,
            state.LevelMetres * 100, state.LevelMetresLow95 * 100, state.LevelMetresHigh95 * 100,
            state.FreeboardMetres * 100, state.FreeboardMetresLow95 * 100, state.FreeboardMetresHigh95 * 100, state.Full.Value, state.Full.Low95, state.Full.High95, state.Pot.Geometry.HeightMetres * 100, options.HeelKilograms,
            [.. options.GatherKilograms.Select(g => Gathers(g.Key, g.Value, report))], report.PullKilogramsPerHour.Value, Math.Max(0, report.PullKilogramsPerHour.Low95), report.PullKilogramsPerHour.High95,
            report.HoursLeft?.Value, report.HoursLeft is { } hoursLeft ? Math.Max(0, hoursLeft.Low95) : null, report.HoursLeft?.High95,
            state.GatherFactor.Value, state.GatherFactor.Low95, state.GatherFactor.High95, missed.Value, Math.Max(0, missed.Low95), Math.Min(1, missed.High95),
            state.LastDipAt, state.Unexplained.Value, state.Unexplained.Low95, state.Unexplained.High95,
            report.LastCharge is { } charge ? LogbookEndpoints.Answer(charge, plan.Site) : null, report.ReadyAt,
            Profile(state.Pot.Geometry), [.. pots.Trace(appliance.Id, moments).Select(s => new PotPointAnswer(s.At, s.MassKilograms, s.MassKilogramsLow95, s.MassKilogramsHigh95))],
            ChargeMaterial.All.ToDictionary(m => m.Name, m => report.Plan.Yielding(m).GlassYield),
            PotGlassAnswer.Of(report.Plan),
            [.. pots.Days(appliance.Id, moment).TakeLast(DaysShown).Select(d => Day(d, report))], [.. pots.WhoLogged(appliance.Id, moment - PeopleOver, moment).Take(MostPeople)]);
    }

    static PotDayAnswer Day(PotDay day, PotReport report)
    {
        var missing = report.Missing.FirstOrDefault(m => m.Day.Date == day.Date);
        var state = day.IsTallied ? "tallied" : day.IsLogged ? "logged" : day.IsMissing ? "missing" : day.IsOver ? "logged" : "under-way";
        return new(NodaTime.Text.LocalDatePattern.Iso.Format(day.Date), day.From, day.To, day.Worked.TotalHours, day.Gathers, day.NominalKilograms, day.TallyId, state, missing?.ExpectedKilograms,
            missing is null ? null : Math.Max(0, missing.ExpectedKilograms - missing.HalfWidth95Kilograms), missing?.ExpectedKilograms + missing?.HalfWidth95Kilograms, missing?.HalfWidth95Kilograms);
    }


    static GathersAnswer Gathers(string size, double kilograms, PotReport report)
    {
        var left = report.State.GathersLeft(size, kilograms, report.Plan.Options.HeelKilograms);
        return new GathersAnswer(size, kilograms, Math.Max(0, left.Value), Math.Max(0, left.Low95), Math.Max(0, left.High95));
    }

    /// <summary>Inner radius at heights from bottom to rim, for drawing the section.</summary>
    static List<ProfileAnswer> Profile(CrucibleGeometry geometry) =>
        [.. Enumerable.Range(0, 41).Select(i => geometry.HeightMetres * i / 40)
            .Select(h => new ProfileAnswer(h * 100, Math.Sqrt(geometry.SurfaceSquareMetres(h) / Math.PI) * 100))];
}
