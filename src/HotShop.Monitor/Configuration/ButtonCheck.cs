using HotShop.Monitor.Modes;

namespace HotShop.Monitor.Configuration;

/// <summary>A press must always be an entry that the logbook takes: nobody reads a refusal with a pipe in hand.</summary>
static class ButtonCheck
{
    public static void Run(ProblemList found, StudioConfiguration configuration)
    {
        var ids = new HashSet<string>(StringComparer.Ordinal);
        var topics = configuration.Appliances.SelectMany(a => a.Channels.Select(c => c.Topic ?? $"{configuration.Broker.Prefix}/{configuration.Site}/{a.Id}/{c.Id}")).ToHashSet(StringComparer.Ordinal);
        for (var i = 0; i < configuration.Buttons.Count; i++)
        {
            var button = configuration.Buttons[i];
            var at = $"buttons[{i}]";
            ConfigurationCheck.Id(found, $"{at}.id", button.Id);
            if (!ids.Add(button.Id)) found.Add($"{at}.id", $"'{button.Id}' is there twice", "give every button an id of its own");
            if (button.Topic is null && button.Id == "log") found.Add($"{at}.id", "'log' is kept for log entries", "choose another id");
            var topic = button.TopicIn(configuration);
            if (topic.Length == 0 || topic.AsSpan().ContainsAny("#+\0")) found.Add($"{at}.topic", $"'{topic}' is no topic of one device", "write it in full, without # and +");
            else if (!topics.Add(topic)) found.Add($"{at}.topic", $"'{topic}' has a channel or a button already", "give the button a topic of its own");
            found.Range($"{at}.settleSeconds", button.SettleSeconds, 0, 60);
            found.Range($"{at}.count", button.Count, 1, 100);
            foreach (var (key, pointer) in new[] { ("valuePointer", button.ValuePointer), ("timePointer", button.TimePointer) })
                if (pointer is not null && !Json.Pointer.JsonPointer.TryParse(pointer, out _))
                    found.Add($"{at}.{key}", $"'{pointer}' is no JSON Pointer", "write one such as /action");
            Entry(found, at, button, configuration);
        }
    }

    static void Entry(ProblemList found, string at, ButtonOptions button, StudioConfiguration configuration)
    {
        if (configuration.Appliances.FirstOrDefault(a => a.Id == button.Appliance) is not { } appliance)
            found.Add($"{at}.appliance", $"there is no appliance '{button.Appliance}'", "name one of the appliances' ids");
        else if (button.Entry == "mode" && (button.Mode is null || ModeNames.Parse(button.Mode) is null))
            found.Add($"{at}.mode", $"'{button.Mode}' is no mode", $"write one of {string.Join(", ", ModeNames.Names)}");
        else if (button.Entry == "gather" && appliance.Pot is null)
            found.Add($"{at}.appliance", $"'{button.Appliance}' has no pot to gather from", "name a furnace with its pot");
        else if (button.Entry == "gather" && (button.Size is null || !appliance.Pot!.GatherKilograms.ContainsKey(button.Size)))
            found.Add($"{at}.size", $"'{button.Size}' is no size of gather here", $"write one of {string.Join(", ", appliance.Pot!.GatherKilograms.Keys)}");
        else if (button.Entry is not ("gather" or "mode"))
            found.Add($"{at}.entry", $"'{button.Entry}' is nothing a button can log", "write gather or mode");
    }
}
