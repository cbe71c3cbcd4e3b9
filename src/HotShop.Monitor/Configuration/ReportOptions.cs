using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

public sealed record ReportOptions
{
    [Description("Ids of people who get the month's report by mail. Each needs a mail address among their outlets.")]
    public IReadOnlyList<string> MailTo { get; init; } = [];

    [Description("Hour of the 1st, in the studio's zone, from which last month's report is mailed: 0 to 23. After downtime it is caught up.")]
    public int Hour { get; init; } = 7;
}

static class ReportCheck
{
    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var reports = configuration.Reports;
        found.Range("reports.hour", reports.Hour, 0, 23);
        for (var i = 0; i < reports.MailTo.Count; i++)
        {
            var (where, id) = ($"reports.mailTo[{i}]", reports.MailTo[i]);
            if (configuration.People.FirstOrDefault(p => p.Id == id) is not { } person)
                found.Add(where, $"there is no person '{id}'", "name one of the people's ids");
            else if (!person.Outlets.Any(o => o.Kind == "mail"))
                found.Add(where, $"'{id}' has no mail address", "give this person an outlet of kind mail with an address");
            if (reports.MailTo.Take(i).Contains(id)) found.Add(where, $"'{id}' is there twice", "write everybody once");
        }
    }
}
