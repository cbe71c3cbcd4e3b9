namespace HotShop.Monitor.Configuration;

static class PeopleCheck
{
    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < configuration.People.Count; i++)
        {
            var person = configuration.People[i];
            ConfigurationCheck.Id(found, $"people[{i}].id", person.Id);
            if (!ids.Add(person.Id)) found.Add($"people[{i}].id", $"'{person.Id}' is there twice", "give every person an id of their own");
            if (person.Outlets.Count == 0) found.Add($"people[{i}].outlets", "there is no way to this person's phone", "name a push address or a mail address");
            for (var o = 0; o < person.Outlets.Count; o++) Outlet(found, $"people[{i}].outlets[{o}]", person.Outlets[o], configuration);
        }
        var notifications = configuration.Notifications;
        foreach (var id in notifications.Order)
            if (!ids.Contains(id)) found.Add("notifications.order", $"there is no person '{id}'", "name one of the people's ids");
        if (configuration.People.Count > 0 && notifications.Order.Count == 0)
            found.Add("notifications.order", "nobody is called", "write the people's ids in the order they are called");
        found.Range("notifications.repeatMinutes", notifications.RepeatMinutes, 1, 120);
        found.Range("notifications.nextToCallMinutes", notifications.NextToCallMinutes, 1, 240);
        found.Range("notifications.callUpToPriority", notifications.CallUpToPriority, 1, 2);
        if (notifications.PingUrl is { } ping && !ConfigurationCheck.IsHttp(ping))
            found.Add("notifications.pingUrl", $"'{ping}' is no http or https address", "write the address your watcher gave you");
        if (notifications.Mail is { } mail)
        {
            if (mail.Security is not ("none" or "starttls" or "tls"))
                found.Add("notifications.mail.security", $"'{mail.Security}' is unknown", "write none, starttls or tls");
            found.Range("notifications.mail.port", mail.Port, 1, 65535);
        }
    }

    static void Outlet(ProblemList found, string where, OutletOptions outlet, StudioConfiguration configuration)
    {
        switch (outlet.Kind)
        {
            case "push" when outlet.Url is null || !ConfigurationCheck.IsHttp(outlet.Url):
                found.Add($"{where}.url", "a push needs the address to post to", "write it, e.g. https://push.example/");
                break;
            case "mail" when outlet.Address is null || !outlet.Address.Contains('@', StringComparison.Ordinal):
                found.Add($"{where}.address", "a mail needs an address", "write it");
                break;
            case "mail" when configuration.Notifications.Mail is null:
                found.Add("notifications.mail", "mail is to be sent but no mail server is named", "write host, port, security and from");
                break;
            case "push" or "mail": break;
            default: found.Add($"{where}.kind", $"'{outlet.Kind}' is unknown", "write push or mail"); break;
        }
    }
}
