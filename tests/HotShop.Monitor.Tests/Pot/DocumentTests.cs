using System.Text.Json;
using System.Text.RegularExpressions;
using HotShop.Monitor.Configuration;
using HotShop.Monitor.Tests.Support;
using HotShop.Monitor.Wire;
using Xunit;

namespace HotShop.Monitor.Tests.Pot;

/// <summary>What docs/pot.md tells people to write is what the service takes.</summary>
public partial class DocumentTests
{
    static readonly string Text = File.ReadAllText(Path.Combine(Root(), "docs", "pot.md"));

    static string Root()
    {
        var folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "HotShop.Monitor.sln"))) folder = Path.GetDirectoryName(folder)!;
        return folder;
    }

    [GeneratedRegex("`(\\{\"entry\".*?\\})`")]
    private static partial Regex Entry();

    [Fact]
    public void Each_entry_in_the_manual_has_the_form_of_one()
    {
        var entries = Entry().Matches(Text).Select(m => m.Groups[1].Value).ToList();
        Assert.Equal(9, entries.Count);
        Assert.All(entries, entry => Assert.Null(LogEntryForm.Check(JsonSerializer.Deserialize<JsonElement>(entry), "furnace-1").Problem));
    }

    [Fact]
    public void The_buttons_in_the_manual_pass_the_check()
    {
        var start = Text.IndexOf("\"buttons\": [", StringComparison.Ordinal) + "\"buttons\": ".Length;
        var buttons = JsonSerializer.Deserialize<IReadOnlyList<ButtonOptions>>(Text[start..(Text.IndexOf("\n    ]", start, StringComparison.Ordinal) + 6)], ConfigurationFile.Json)!;
        Assert.Equal(3, buttons.Count);
        Assert.Empty(ConfigurationCheck.Problems(SomeStudio.Configuration with { Buttons = buttons }, "hotshop.json"));
    }
}
