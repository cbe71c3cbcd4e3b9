using System.ComponentModel;

namespace HotShop.Monitor.Configuration;

public sealed record PersonOptions
{
    [Description("Id: lower-case letters, digits, '-'.")]
    public required string Id { get; init; }

    public required string Name { get; init; }

    [Description("Phone number shown to others who must reach this person.")]
    public string? Phone { get; init; }

    [Description("Ways to this person's phone, tried together.")]
    public required IReadOnlyList<OutletOptions> Outlets { get; init; }
}

public sealed record OutletOptions
{
    [Description("push (HTTP with JSON) or mail (SMTP).")]
    public required string Kind { get; init; }

    [Description("push: address to post to, e.g. https://push.example/ or http://10.0.0.5:8080/.")]
    public string? Url { get; init; }

    [Description("push: topic named in the message. Long and random on a shared server.")]
    public string? Topic { get; init; }

    [Description("push: file holding an access token sent as 'Authorization: Bearer'.")]
    public string? TokenFile { get; init; }

    [Description("mail: address.")]
    public string? Address { get; init; }
}

public sealed record NotificationOptions
{
    [Description("Ids of people in the order they are called. The first has the phone tonight.")]
    public IReadOnlyList<string> Order { get; init; } = [];

    [Description("Minutes until the message is sent again while nobody has it.")]
    public double RepeatMinutes { get; init; } = 5;

    [Description("Minutes without an answer until the next person is called as well.")]
    public double NextToCallMinutes { get; init; } = 10;

    [Description("Lowest urgency that goes to a phone: 1 or 2. Priority 3 waits for the morning.")]
    public int CallUpToPriority { get; init; } = 2;

    public MailOptions? Mail { get; init; }

    [Description("Address asked once a minute while everything works; whoever watches it notices when it stops.")]
    public string? PingUrl { get; init; }
}

public sealed record MailOptions
{
    public required string Host { get; init; }
    public int Port { get; init; } = 587;

    [Description("none, starttls or tls.")]
    public string Security { get; init; } = "starttls";

    public string? User { get; init; }

    [Description("File holding the password. Or set HOTSHOP_MAIL_PASSWORD.")]
    public string? PasswordFile { get; init; }

    public required string From { get; init; }
}
