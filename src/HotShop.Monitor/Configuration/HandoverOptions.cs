using System.ComponentModel;
using NodaTime.Text;

namespace HotShop.Monitor.Configuration;

public sealed record HandoverOptions
{
    [Description("Time of day of the morning handover and its mail, HH:MM in the studio's zone.")]
    public string Hour { get; init; } = "07:00";

    [Description("Days on which it is mailed, e.g. daily, mon-fri or tue,thu,sat.")]
    public string Days { get; init; } = "daily";

    [Description("Ids of people who get it by mail. Each needs a mail address among their outlets.")]
    public IReadOnlyList<string> MailTo { get; init; } = [];

    [Description("When the night begins where the log does not tell the end of work, HH:MM.")]
    public string Evening { get; init; } = "18:00";

    [Description("How many earlier nights of the same kind the night's gas is compared with, 4 to 60.")]
    public int Nights { get; init; } = 14;

    [Description("Temperature of the air in an annealer whose time is told, with unit, e.g. '50 °C'. Whether it can be opened is for whoever knows the load.")]
    public string OpenBelow { get; init; } = "50 °C";
}

/// <summary>Something that wears or is due again: a filter, a check of a couple, a service.</summary>
public sealed record UpkeepOptions
{
    [Description("What is to be done, e.g. 'blower filter'. A log entry (repair, note or calibration) that names it says that it is done.")]
    public required string Name { get; init; }

    [Description("Id of the appliance it belongs to; left out: the whole shop.")]
    public string? Appliance { get; init; }

    [Description("Due after so many days.")]
    public double? EveryDays { get; init; }

    [Description("Due after so many hours of the appliance above 1000 °C (annealers and ovens: above 400 °C).")]
    public double? EveryHours { get; init; }
}

static class HandoverCheck
{
    static readonly LocalTimePattern Clock = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var handover = configuration.Handover;
        TimeOfDay(found, "handover.hour", handover.Hour);
        TimeOfDay(found, "handover.evening", handover.Evening);
        if (Weekdays.Parse(handover.Days) is null) found.Add("handover.days", $"'{handover.Days}' names no days", "write e.g. daily, mon-fri or tue,thu,sat");
        found.Range("handover.nights", handover.Nights, 4, 60);
        if (Limit.Parse(handover.OpenBelow)?.Celsius is not (>= 30 and <= 120))
            found.Add("handover.openBelow", $"'{handover.OpenBelow}' is no temperature from 30 to 120 °C (86 to 248 °F)", "write e.g. 50 °C or 120 °F");
        People(found, configuration);
        Upkeep(found, configuration);
    }

    static void TimeOfDay(ProblemList found, string where, string text)
    {
        if (!Clock.Parse(text).Success) found.Add(where, $"'{text}' is no time of day", "write HH:MM, e.g. 07:00");
    }

    static void People(ProblemList found, StudioConfiguration configuration)
    {
        var to = configuration.Handover.MailTo;
        for (var i = 0; i < to.Count; i++)
        {
            if (configuration.People.FirstOrDefault(p => p.Id == to[i]) is not { } person)
                found.Add($"handover.mailTo[{i}]", $"there is no person '{to[i]}'", "name one of the people's ids");
            else if (!person.Outlets.Any(o => o.Kind == "mail"))
                found.Add($"handover.mailTo[{i}]", $"'{to[i]}' has no mail address", "give this person an outlet of kind mail with an address");
            if (to.Take(i).Contains(to[i])) found.Add($"handover.mailTo[{i}]", $"'{to[i]}' is there twice", "write everybody once");
        }
    }

    static void Upkeep(ProblemList found, StudioConfiguration configuration)
    {
        for (var i = 0; i < configuration.Upkeep.Count; i++)
        {
            var (where, item) = ($"upkeep[{i}]", configuration.Upkeep[i]);
            if (string.IsNullOrWhiteSpace(item.Name) || item.Name.Length > 60) found.Add($"{where}.name", "a name of 1 to 60 characters is missing", "write what is to be done, e.g. blower filter");
            if (configuration.Upkeep.Take(i).Any(o => o.Appliance == item.Appliance && string.Equals(o.Name, item.Name, StringComparison.OrdinalIgnoreCase)))
                found.Add($"{where}.name", $"'{item.Name}' is there twice", "give each its own name");
            if (item.Appliance is { } id && configuration.Appliances.All(a => a.Id != id)) found.Add($"{where}.appliance", $"there is no appliance '{id}'", "name one of the appliances' ids, or leave it out");
            if (item.EveryDays is null == item.EveryHours is null) found.Add(where, "either everyDays or everyHours says when it is due", "write one of the two");
            if (item.EveryDays is { } days) found.Range($"{where}.everyDays", days, 1, 3660);
            if (item.EveryHours is { } hours) found.Range($"{where}.everyHours", hours, 1, 100_000);
            if (item.EveryHours is not null && item.Appliance is null) found.Add($"{where}.appliance", "hours are those of an appliance", "name the appliance, or write everyDays");
        }
    }
}
