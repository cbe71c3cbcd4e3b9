using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using NodaTime;

namespace HotShop.Monitor.Configuration;

/// <summary>Finds everything that is wrong at once, so that nobody mends a file line by line.</summary>
public static partial class ConfigurationCheck
{
    [GeneratedRegex("^[a-z0-9][a-z0-9-]{0,63}$")]
    private static partial Regex IdForm();

    public static IReadOnlyList<ConfigurationProblem> Problems(StudioConfiguration configuration, string file)
    {
        var found = new ProblemList(file);
        Id(found, "site", configuration.Site);
        if (DateTimeZoneProviders.Tzdb.GetZoneOrNull(configuration.Zone) is null)
            found.Add("zone", $"'{configuration.Zone}' is no IANA time zone", "write one such as Europe/Berlin or America/New_York");
        if (configuration.Currency.Length != 3 || !configuration.Currency.All(char.IsAsciiLetterUpper))
            found.Add("currency", $"'{configuration.Currency}' is no ISO 4217 code", "write three capitals such as EUR or USD");
        if (configuration.Culture is { } culture && WritingHabit.Named(culture) is null)
            found.Add("culture", $"'{culture}' is unknown", $"write one of {string.Join(", ", WritingHabit.Names)}, or leave it out");
        if (configuration.Units is not ("metric" or "us" or "both"))
            found.Add("units", $"'{configuration.Units}' is unknown", "write metric, us or both");
        Http(found, configuration.Http);
        BrokerCheck.Run(found, configuration);
        Store(found, configuration.Store, configuration.Backup);
        GasCheck.Run(found, configuration.Gas);
        PriceCheck.Run(found, configuration);
        ApplianceCheck.Run(found, configuration);
        MeterCheck.Run(found, configuration);
        ButtonCheck.Run(found, configuration);
        PeopleCheck.Run(found, configuration);
        DatedValues.Check(found, configuration);
        ReportCheck.Run(found, configuration);
        HandoverCheck.Run(found, configuration);
        return found.Problems;
    }

    internal static void Id(ProblemList found, string where, string? id)
    {
        if (id is null || !IdForm().IsMatch(id))
            found.Add(where, $"'{id}' is no id", "use lower-case letters, digits and '-', at most 64");
    }

    internal static void Endpoint(ProblemList found, string where, string text)
    {
        if (!IPEndPoint.TryParse(text, out var endpoint) || !text.Contains(':', StringComparison.Ordinal) || (endpoint.AddressFamily == System.Net.Sockets.AddressFamily.InterNetworkV6 && !text.Contains("]:", StringComparison.Ordinal)))
            found.Add(where, $"'{text}' is no address with a port", "write one such as 127.0.0.1:5080 or 0.0.0.0:5080");
    }

    static void Http(ProblemList found, HttpOptions http)
    {
        Endpoint(found, "http.listen", http.Listen);
        if (http.PublicAddress is { } address && !IsHttp(address))
            found.Add("http.publicAddress", $"'{address}' is no http or https address", "write one such as https://studio.example");
    }

    internal static bool IsHttp(string text) =>
        Uri.TryCreate(text, UriKind.Absolute, out var uri) && uri.Scheme is ("http" or "https");

    static void Store(ProblemList found, StoreOptions store, BackupOptions backup)
    {
        if (store.Profile is not ("disk" or "memory-card"))
            found.Add("store.profile", $"'{store.Profile}' is unknown", "write disk or memory-card");
        found.Range("store.cardLingerSeconds", store.CardLingerSeconds, 2, 10);
        found.Range("store.rawDays", store.RawDays, 7, 3650);
        found.Range("store.minuteDays", store.MinuteDays, 30, 36_500);
        found.Range("backup.keep", backup.Keep, 1, 366);
        found.Range("store.ballastMebibytes", store.BallastMebibytes, 1, 1024);
    }
}

/// <summary>Collects problems with the file's name before the key.</summary>
internal sealed class ProblemList(string file)
{
    readonly List<ConfigurationProblem> problems = [];

    public IReadOnlyList<ConfigurationProblem> Problems => problems;

    public void Add(string where, string what, string whatToDo) => problems.Add(new($"{file}: {where}", what, whatToDo));

    public void Range(string where, double value, double low, double high)
    {
        if (!(value >= low && value <= high))
            Add(where, string.Create(CultureInfo.InvariantCulture, $"{value} is out of range"), string.Create(CultureInfo.InvariantCulture, $"write a number from {low} to {high}"));
    }
}
