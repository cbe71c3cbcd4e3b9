using HotShop.Physics.Melting;
using NodaTime;

namespace HotShop.Physics.Tests.Melting;

/// <summary>
/// A furnace made by hand, so that its holding power and melting energy are known: charged from 18 h on, hotter until 2 h to cook, gathered from 10 h to 17 h, idle
/// and colder on two days of the week.
/// </summary>
sealed record SomeFurnace
{
    public static readonly Instant Start = Instant.FromUtc(2026, 3, 3, 0, 0);

    public double HoldingKilowatts { get; init; } = 20;
    public double IdleKilowatts { get; init; } = 17;
    public double KilowattHoursPerKilogram { get; init; } = 1.1;
    public double KilowattHoursPerKilogramOfBatch { get; init; } = 1.6;
    public double DoorsOfAnEvening { get; init; } = 40;
    public double DoorOfAGather { get; init; } = 0.08;
    public double CookKilowattHours { get; init; } = 15;
    public bool IsMeasuringSetpoint { get; init; } = true;

    /// <summary>kWh of noise in each hour by its number.</summary>
    public Func<int, double> Noise { get; init; } = hour => 0.1 * Math.Sin(hour * 1.7);

    public Func<int, double> KilogramsOfDay { get; init; } = day => 50 + 12 * Math.Sin(day * 2.1);

    public Func<int, bool> IsBatchDay { get; init; } = _ => false;

    public Func<int, double> GathersOfHour { get; init; } = hour => 8 + 3 * Math.Sin(hour % 24 * 1.3);

    static bool IsFree(int day) => day % 7 is 5 or 6;

    public IReadOnlyList<FurnaceHour> Hours(int days) => [.. Enumerable.Range(0, days * 24).Select(Hour)];

    FurnaceHour Hour(int number)
    {
        var (day, hour) = (number / 24, number % 24);
        var cooked = hour < 2 ? day - 1 : day;
        var isCook = hour is >= 18 or < 2 && cooked >= 0 && !IsFree(cooked);
        var isIdle = IsFree(day) && !isCook;
        var kilograms = hour == 19 && !IsFree(day) ? KilogramsOfDay(day) : 0;
        // A charge is melted within four hours.
        var melting = hour is >= 19 and < 23 && !IsFree(day) ? KilogramsOfDay(day) / 4 : 0;
        var gathers = hour is >= 10 and < 17 && !IsFree(day) ? Math.Round(GathersOfHour(number)) : 0;
        var energy = (isIdle ? IdleKilowatts : HoldingKilowatts) + melting * (IsBatchDay(day) ? KilowattHoursPerKilogramOfBatch : KilowattHoursPerKilogram)
            + (melting > 0 ? DoorsOfAnEvening / 4 : 0) + (isCook ? CookKilowattHours / 8 : 0) + gathers * DoorOfAGather + Noise(number);
        double? setpoint = IsMeasuringSetpoint ? isCook ? 1200 : isIdle ? 1090 : 1150 : null;
        return new FurnaceHour(Start + Duration.FromHours(number), energy, setpoint, kilograms, IsBatchDay(day) ? kilograms : 0, gathers);
    }

    /// <summary>Edges at eight in the morning.</summary>
    public static IReadOnlyList<Instant> Edges(int days, int from = 0) => [.. Enumerable.Range(from, days - from).Select(d => Start + Duration.FromHours(d * 24 + 8))];

    public (HoldingFit Holding, MeltingLine? Line) Line(int days, CommonDoubt? doubt = null, int from = 0)
    {
        var hours = HeldHours.Of(Hours(days));
        var holding = HoldingFit.Of(hours)!;
        return (holding, MeltingLine.Of(hours, MeltingDay.Between(hours, Edges(days, from), holding), holding, doubt ?? new(0, 0)));
    }
}
