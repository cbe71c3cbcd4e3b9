using System.Reflection;
using System.Text.Json.Nodes;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Logbook;
using HotShop.Monitor.Readings;
using HotShop.Monitor.Store;
using HotShop.Monitor.Wire;
using Microsoft.Data.Sqlite;
using NodaTime;

namespace HotShop.Monitor.Tests.Reports;

/// <summary>
/// An invented studio's months, written as the service leaves them: hour rows, modes and charges. Work is from Tuesday to Saturday, the furnace is charged in the
/// evening, two days have no sensors, and gas gets dearer in the middle of the month.
/// </summary>
static class OwnersMonths
{
    /// <summary>Saturday afternoon, 24 October 2026.</summary>
    public static readonly Instant Now = Instant.FromUtc(2026, 10, 24, 13, 10);

    public static readonly LocalDate Silent = new(2026, 10, 8), Dearer = new(2026, 10, 14);

    static readonly DateTimeZone zone = DateTimeZoneProviders.Tzdb["Europe/Berlin"];

    /// <summary>The demo's studio with its own prices.</summary>
    public static StudioConfiguration Configuration()
    {
        using var reader = new StreamReader(typeof(MonitorHost).Assembly.GetManifestResourceStream("HotShop.Monitor.Demo.quillmere.jsonc")!);
        return ConfigurationFile.Parse(reader.ReadToEnd(), "quillmere.jsonc") with
        {
            Prices =
            [
                new() { From = "2025-01-01", Energy = "gas", PerKilowattHour = 0.11m, StandingChargePerDay = 1.90m },
                new() { From = "2026-10-14", Energy = "gas", PerKilowattHour = 0.118m, StandingChargePerDay = 1.90m },
                new() { From = "2025-01-01", Energy = "electricity", PerKilowattHour = 0.31m },
            ],
            Store = new() { BallastMebibytes = 1 },
        };
    }

    /// <summary>Hour rows of [first, now), before the service opens the store.</summary>
    public static void Fill(StudioPlan plan, LocalDate first, Instant now, bool isDemo = true)
    {
        using var store = StudioStore.Open(plan, isDemo);
        using var connection = store.OpenWriter();
        StudioStore.Run(connection, "PRAGMA synchronous=OFF; BEGIN");
        string[] channels = ["furnace-1/gas-flow", "glory-hole-1/gas-flow", "annealer-1/relay", "annealer-2/power", "shop/meter"];
        for (var i = 0; i < channels.Length; i++)
        {
            using var series = connection.CreateCommand();
            series.CommandText = $"INSERT INTO series VALUES ({i + 1}, '{channels[i]}', '{plan.Channels.Find(channels[i])!.Quantity.CanonicalUnit()}')";
            series.ExecuteNonQuery();
        }
        using var row = connection.CreateCommand();
        row.CommandText = "INSERT INTO hour VALUES ($series, $hour, $amount, 3600, 0, $amount, $amount, $amount, 360, 0)";
        foreach (var name in new[] { "$series", "$hour", "$amount" }) row.Parameters.Add(new SqliteParameter { ParameterName = name });
        for (var hour = zone.AtStartOfDay(first).ToInstant(); hour + Duration.FromHours(1) <= now; hour += Duration.FromHours(1))
        {
            var local = hour.InZone(zone).LocalDateTime;
            if (local.Date == Silent || local.Date == Silent.PlusDays(1)) continue;
            var amounts = Amounts(local);
            for (var i = 0; i < amounts.Length; i++)
            {
                (row.Parameters[0].Value, row.Parameters[1].Value, row.Parameters[2].Value) = (i + 1, hour.ToMicroseconds(), amounts[i]);
                row.ExecuteNonQuery();
            }
        }
        StudioStore.Run(connection, "COMMIT");
    }

    /// <summary>Modes and charges of [first, now), in the log.</summary>
    public static async Task Log(LogbookBook logbook, LocalDate first, Instant now)
    {
        for (var day = first; zone.AtStartOfDay(day).ToInstant() < now; day = day.PlusDays(1))
        {
            if (!IsWorked(day)) continue;
            await Mode("glory-hole-1", day, 8, "heat-up");
            await Mode("glory-hole-1", day, 9, "working");
            await Mode("furnace-1", day, 9, "working");
            await Mode("glory-hole-1", day, 17, "off");
            await Mode("furnace-1", day, 17, "charging");
            await Add("furnace-1", "charge", At(day, 17).Plus(Duration.FromMinutes(10)), new JsonObject { ["material"] = "cullet", ["mass"] = Math.Round(Charged(day)), ["unit"] = "kg" });
            await Mode("furnace-1", day, 21, "holding");
        }

        Task Mode(string appliance, LocalDate day, int hour, string mode) => Add(appliance, "mode", At(day, hour), new JsonObject { ["mode"] = mode });

        async Task Add(string appliance, string entry, Instant at, JsonObject fields)
        {
            if (at >= now) return;
            var result = await logbook.Add(new WireLogEntry(appliance, entry, $"{entry}-{appliance}-{at}", "Mo", at, fields), now, CancellationToken.None);
            if (result.Refusal is { } refusal) throw new InvalidOperationException(refusal);
        }
    }

    static Instant At(LocalDate day, int hour) => day.At(new LocalTime(hour, 0)).InZoneLeniently(zone).ToInstant();

    public static bool IsWorked(LocalDate day) => day.DayOfWeek is not (IsoDayOfWeek.Sunday or IsoDayOfWeek.Monday);

    static double Charged(LocalDate day) => 38 + 10 * Wobble(day.DayOfYear, 3);

    static double[] Amounts(LocalDateTime at)
    {
        var (hour, isWorked, some) = (at.Hour, IsWorked(at.Date), Wobble(at.DayOfYear * 24 + at.Hour, 1));
        var furnace = 2.05 + 0.08 * some + (isWorked && hour is >= 17 and < 21 ? Charged(at.Date) * 0.055 : 0) + (isWorked && hour is >= 9 and < 17 ? 0.35 : 0);
        var gloryHole = !isWorked ? 0 : hour == 8 ? 7.5 : hour is >= 9 and < 17 ? 4.6 + 0.8 * some : 0;
        var (first, second) = isWorked ? (hour is >= 10 or < 4 ? 0.42 : 0.05, hour >= 12 ? 2.6 : 0.7) : (0.0, 0.1);
        return [furnace, gloryHole, first, second, (furnace + gloryHole) * 1.025 + 0.06];
    }

    /// <summary>-1 to 1, the same for the same numbers.</summary>
    static double Wobble(int i, int k)
    {
        var v = Math.Sin(i * 12.9898 + k * 78.233) * 43758.5453;
        return 2 * (v - Math.Floor(v)) - 1;
    }
}
